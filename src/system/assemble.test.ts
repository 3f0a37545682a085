import { describe, expect, it } from 'vitest';
import { assemble, assembleCar } from './assemble.ts';
import { type Car, LAYOUTS } from './car.ts';
import { carParameters } from './car-parameters.ts';
import { defaultParameters } from './defaults.ts';
import { applyFaults, FAULT_KINDS, faultKindsOf } from './faults/catalogue.ts';
import { BOUNDARIES } from './network.ts';
import { LEAK_PLACES } from './parameters.ts';

describe.each(LAYOUTS)('layout %s', (layout) => {
  const network = assemble(defaultParameters(), layout);

  it('joins only spaces and boundaries that exist, and gives every passage its own name', () => {
    const known = new Set<string>([...network.spaces.map((s) => s.id), ...BOUNDARIES]);
    for (const passage of network.passages) {
      expect(known, passage.id).toContain(passage.from);
      expect(known, passage.id).toContain(passage.to);
    }
    expect(new Set(network.passages.map((p) => p.id)).size).toBe(network.passages.length);
  });

  it('reaches ambient from every space when nothing is energised', () => {
    const open = network.passages.filter((p) => p.kind !== 'orifice' || p.openAreaM2 > 0 || p.shutAreaM2 > 0);
    const reached = new Set<string>(['ambient']);
    for (let round = 0; round < network.spaces.length; round++) {
      for (const p of open) {
        if (reached.has(p.from)) reached.add(p.to);
        else if (reached.has(p.to)) reached.add(p.from);
      }
    }
    for (const space of network.spaces) expect(reached, space.id).toContain(space.id);
  });

  it('changes the network for every fault that it can have, and never its structure', () => {
    for (const kind of faultKindsOf(layout)) {
      for (const place of kind.places ?? [undefined]) {
        const faulty = assemble(defaultParameters(), layout, [
          { kind: kind.kind, ...(place === undefined ? {} : { place }) },
        ]);
        expect(faulty.passages.map((p) => p.id)).toEqual(network.passages.map((p) => p.id));
        expect(faulty.spaces.map((s) => s.id)).toEqual(network.spaces.map((s) => s.id));
        // A sensor stuck "from 0 s" and an ejector of an unboosted layout change nothing but their own field.
        expect(JSON.stringify(faulty), kind.kind).not.toBe(JSON.stringify(network));
      }
    }
  });

  it('has a leak passage at every place', () => {
    for (const place of LEAK_PLACES) expect(network.passages.some((p) => p.id === `leak.${place}`)).toBe(true);
  });
});

describe('faults', () => {
  it('cover F01 to F19 as far as a gas, a sensor or a valve can show them', () => {
    const families = new Set(FAULT_KINDS.flatMap((k) => k.family.split(' ')));
    for (let i = 1; i <= 19; i++) expect(families).toContain(`F${String(i).padStart(2, '0')}`);
  });

  it('leave the nominal parameters alone', () => {
    const nominal = defaultParameters();
    const before = JSON.stringify(nominal);
    for (const kind of FAULT_KINDS) applyFaults(nominal, kind.layouts?.[0] ?? 'engine-vacuum', [{ kind: kind.kind }]);
    expect(JSON.stringify(nominal)).toBe(before);
  });

  it('add holes at one place by area, and keep two places apart', () => {
    const both = applyFaults(defaultParameters(), 'engine-vacuum', [
      { kind: 'leak', place: 'cap', size: 0.3e-3 },
      { kind: 'leak', place: 'cap', size: 0.4e-3 },
      { kind: 'leak', place: 'purgeLine', size: 0.2e-3 },
    ]);
    expect(both.leakDiametersM.cap).toBeCloseTo(0.5e-3, 12);
    expect(both.leakDiametersM.purgeLine).toBeCloseTo(0.2e-3, 12);
  });

  it('say what is expected when a name, place or layout is wrong', () => {
    const p = defaultParameters();
    expect(() => applyFaults(p, 'engine-vacuum', [{ kind: 'flux' }])).toThrow(/no fault is called 'flux'.*leak/);
    expect(() => applyFaults(p, 'engine-vacuum', [{ kind: 'pump-weak' }])).toThrow(/pump-reference.*engine-vacuum/);
    expect(() => applyFaults(p, 'engine-vacuum', [{ kind: 'purge-seeping', place: 'cap' }])).toThrow(/only one place/);
    expect(() => applyFaults(p, 'engine-vacuum', [{ kind: 'leak', size: Number.NaN }])).toThrow(/finite/);
  });
});

describe('a car file', () => {
  it('carries what it tells and leaves the rest to the defaults', () => {
    const network = assembleCar({
      schema: 'vaporwright-car-1',
      label: 'invented hatchback',
      layout: 'engine-vacuum',
      tankVolumeM3: 0.045,
      fillerNeckVolumeM3: 0.002,
      canisterFreeVolumeM3: 0.003,
      pressureSensor: { minGaugePa: -5000, maxGaugePa: 2000 },
    });
    const tank = network.spaces.find((s) => s.id === 'tank');
    expect(tank?.kind === 'tank' && tank.shellVolumeM3).toBe(0.045);
    expect(tank?.kind === 'tank' && tank.neckVolumeM3).toBe(0.002);
    expect(network.sensors[0]?.minGaugePa).toBe(-5000);
    let canister = 0;
    for (const s of network.spaces)
      if (s.kind === 'bed' || s.id === 'head') canister += s.kind === 'tank' ? 0 : s.volumeM3;
    expect(canister).toBeCloseTo(0.003, 12);
  });
});

describe('fuel of a car', () => {
  const pressure = (fuel: Car['fuel']): number =>
    carParameters({ schema: 'vaporwright-car-1', label: 'made', layout: 'engine-vacuum', ...(fuel && { fuel }) }).fuel
      .reidVapourPressurePa;

  it('ethanol shifts the vapour pressure of the usual fuel, which holds a tenth of it', () => {
    const usual = pressure(undefined);
    expect(pressure({ ethanolVolumeFraction: 0.1 })).toBeCloseTo(usual, 6);
    // Without it the vapour pressure is some kilopascal lower.
    expect(usual - pressure({ ethanolVolumeFraction: 0 })).toBeGreaterThan(3000);
    expect(usual - pressure({ ethanolVolumeFraction: 0 })).toBeLessThan(10_000);
  });

  it('a stated range is that of the fuel as sold, whatever its ethanol', () => {
    const range = { low: 50_000, high: 72_000 };
    expect(pressure({ reidVapourPressurePa: range, ethanolVolumeFraction: 0 })).toBeCloseTo(60_000, 6);
    expect(pressure({ reidVapourPressurePa: range, ethanolVolumeFraction: 0.1 })).toBeCloseTo(60_000, 6);
  });
});
