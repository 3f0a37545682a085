import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PROCEDURES, type ProcedureKind, type Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { applyCause, CATALOGUE } from '../causes/catalogue.ts';
import { CAUSES } from '../finding.ts';
import { parameterValue } from '../fit/parameter.ts';
import { causePriors } from './cause-priors.ts';
import { findConditions } from './conditions.ts';
import { baseQuantities, carParameters, holePrior, recordingParameters } from './nuisances.ts';
import { COMPLAINTS, ROOT_CAUSE_PERCENT } from './root-causes.ts';
import { selectionFactor } from './selection.ts';

const CAR: Car = {
  schema: 'vaporwright-car-1',
  label: 'made up',
  layout: 'engine-vacuum',
  tankVolumeM3: 0.05,
  fillerNeckVolumeM3: 0.002,
  canisterFreeVolumeM3: 0.0025,
  pressureSensor: { minGaugePa: -3700, maxGaugePa: 3700, offsetTolerancePa: 50, gainTolerance: 0.02 },
  fuel: { reidVapourPressurePa: { low: 50e3, high: 60e3 } },
};
const channel = (x: number) => new Float64Array(30).fill(x);
const recording = (channels: Recording['channels']): Recording => ({
  label: 'day.csv',
  timeS: Float64Array.from({ length: 30 }, (_, i) => i),
  channels,
});
const FULL = {
  fuelLevel: channel(0.4),
  ambientTemperatureK: channel(290),
  fuelTemperatureK: channel(298),
  barometricPa: channel(95e3),
};

describe('priors of the causes', () => {
  const complaints = fc.uniqueArray(fc.constantFrom(...COMPLAINTS), { maxLength: 4 });
  const codes = fc.uniqueArray(fc.constantFrom('P0442', 'p0455', 'P0496', 'P0446', 'P0301', 'nonsense'), {
    maxLength: 4,
  });

  it('sum to 1, and leave no cause of an engine test out', () => {
    fc.assert(
      fc.property(complaints, codes, (a, b) => {
        const p = causePriors(a, b);
        expect(Object.keys(p).sort()).toEqual([...CAUSES].sort());
        expect(CAUSES.reduce((s, c) => s + p[c], 0)).toBeCloseTo(1, 9);
        for (const c of CATALOGUE) expect(p[c.id], c.id).toBeGreaterThan(0);
      }),
    );
  });

  it('follow the complaint: purge flow when not commanded, slow filling, a large leak code', () => {
    const nothing = causePriors([], []);
    const purge = causePriors([], ['P0496']);
    expect(purge.purge_leak + purge.purge_stuck_open).toBeGreaterThan(0.5);
    expect(causePriors(['slow fill'], []).vent_restricted).toBeGreaterThan(2 * nothing.vent_restricted);
    expect(causePriors([], ['P0455']).gross_leak).toBeGreaterThan(nothing.gross_leak);
    expect(causePriors([], ['P0301'])).toEqual(nothing);
    expect(causePriors([], [' p0496 '])).toEqual(purge);
  });

  it('rest on a table with a figure for every complaint, each column about 100 %', () => {
    COMPLAINTS.forEach((name, i) => {
      const sum = Object.values(ROOT_CAUSE_PERCENT).reduce((s, row) => s + row[i]!, 0);
      expect(sum, name).toBeGreaterThan(90);
      expect(sum, name).toBeLessThan(115);
    });
  });

  it('a cause counts in full once one recording can show it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PROCEDURES), fc.constantFrom(...CAUSES), (procedure, id) => {
        expect(selectionFactor([procedure], id)).toBeGreaterThan(0);
        expect(selectionFactor([procedure, 'vacuum-draw'], id)).toBeGreaterThanOrEqual(
          selectionFactor(['vacuum-draw'], id),
        );
      }),
    );
    expect(selectionFactor(['refuelling'], 'leak')).toBeLessThan(
      selectionFactor(['refuelling', 'vacuum-draw'], 'leak'),
    );
  });
});

describe('conditions', () => {
  it('come from the channels and the car', () => {
    const c = findConditions(CAR, recording(FULL));
    expect(c.warnings).toEqual([]);
    expect(c.gasVolumeM3).toBeCloseTo(0.05 * 0.6 + 0.002, 12);
    expect([c.ambientAbsPa, c.ambientTemperatureK, c.fuelTemperatureK]).toEqual([95e3, 290, 298]);
    expect(c.fuelLevel).toBeCloseTo(0.4, 12);
    expect(c.fuelTemperatureKnown && c.levelKnown).toBe(true);
    // vapour pressures rise by 3 to 5 % a kelvin near room temperature (AP-42 7.1)
    expect(c.vapourSensitivityPerK).toBeGreaterThan(0.03);
    expect(c.vapourSensitivityPerK).toBeLessThan(0.05);
  });

  it('warn of each thing that is missing, assume it openly and are less certain for it', () => {
    const { tankVolumeM3: _, fuel: _fuel, ...bare } = CAR;
    const known = findConditions(CAR, recording(FULL));
    const unknown = findConditions(bare, recording({}));
    for (const what of ['barometric pressure', 'ambient temperature', 'fuel level', 'tank volume'])
      expect(
        unknown.warnings.some((w) => w.startsWith('day.csv: ') && w.includes(what)),
        what,
      ).toBe(true);
    expect(unknown.gasVolumeSdLn).toBeGreaterThan(2 * known.gasVolumeSdLn);
    expect(unknown.vapourPressureSdLn).toBeGreaterThan(2 * known.vapourPressureSdLn);
  });

  it('take ethanol into account where no range of the vapour pressure is given', () => {
    const { fuel: _, ...bare } = CAR;
    const pressure = (ethanolVolumeFraction: number) =>
      findConditions({ ...bare, fuel: { ethanolVolumeFraction } }, recording(FULL)).vapourPressurePa;
    // a tenth of ethanol lifts the vapour pressure of petrol by about a psi of some nine (USEPA, volatility waiver of 40 CFR 1090)
    expect(pressure(0.1) / pressure(0)).toBeGreaterThan(1.05);
    expect(pressure(0.1) / pressure(0)).toBeLessThan(1.2);
    const stated = { reidVapourPressurePa: { low: 50e3, high: 60e3 } };
    expect(findConditions({ ...bare, fuel: { ...stated, ethanolVolumeFraction: 0.1 } }, recording(FULL))).toEqual(
      findConditions({ ...bare, fuel: stated }, recording(FULL)),
    );
  });

  it('skip samples that are missing', () => {
    const holes = channel(0.4).map((x, i) => (i % 3 === 0 ? Number.NaN : x));
    expect(findConditions(CAR, recording({ ...FULL, fuelLevel: holes })).fuelLevel).toBeCloseTo(0.4, 12);
  });
});

describe('priors of the nuisances', () => {
  const c = findConditions(CAR, recording(FULL));
  const shape = {
    procedure: 'vacuum-draw' as const,
    conditions: c,
    changeGapsS: [0.1, 0.1, 0.1],
    warmKnots: 1,
    hasDraw: true,
  };

  it('set every quantity once a recording, with positive spreads', () => {
    const list = [...carParameters(CAR, c), ...recordingParameters(shape, 0), ...recordingParameters(shape, 1)];
    const slots = list.map((p) => `${p.recording} ${p.slot}`);
    expect(new Set(slots).size).toBe(slots.length);
    for (const p of list) {
      expect(p.sd).toBeGreaterThan(0);
      if (p.kind === 'log') expect(p.centre).toBeGreaterThan(0);
    }
    expect(list.filter((p) => p.name.startsWith('shift') && p.recording === 0)).toHaveLength(3);
  });

  it('take the limits of the sensor from the car: a limit is two standard deviations', () => {
    const list = carParameters(CAR, c);
    expect(list.find((p) => p.name === 'offset')!.sd).toBe(25);
    expect(list.find((p) => p.name === 'gain')!.sd).toBe(0.01);
  });

  it('begin a fit where a filling ended near full, for a gauge that leaves no room for what was poured', () => {
    const volume = (filledVolumeM3: number) =>
      recordingParameters({ ...shape, procedure: 'refuelling', filledVolumeM3 }, 0).find((x) => x.name === 'volume')!;
    expect(parameterValue(volume(0.033), volume(0.033).start!)).toBeCloseTo(0.033, 9);
    // the centre stays what gauge and papers say, and no start lies beyond what they allow
    expect(volume(0.033).centre).toBe(c.gasVolumeM3);
    expect(Math.abs(volume(0.09).start!)).toBeLessThanOrEqual(2.5);
    expect(recordingParameters(shape, 0).find((x) => x.name === 'volume')!.start).toBeUndefined();
  });

  it('let a system that cannot breathe hold a pressure at the start, but not a filling, where the cap is off', () => {
    const initialSd = (procedure: ProcedureKind, id: string) =>
      applyCause(
        recordingParameters({ ...shape, procedure }, 0),
        CATALOGUE.filter((cause) => cause.id === id).slice(0, 1),
        [procedure],
      ).find((x) => x.name === 'initial')!.sd;
    const sound = initialSd('vacuum-draw', 'none');
    for (const id of ['vent_stuck_closed', 'path_blocked', 'vent_restricted']) {
      expect(initialSd('vacuum-draw', id)).toBeGreaterThan(10 * sound);
      expect(initialSd('refuelling', id)).toBe(sound);
    }
    expect(initialSd('engine-off', 'path_blocked')).toBeGreaterThan(10 * sound);
    expect(initialSd('engine-off', 'vent_restricted')).toBe(sound);
  });

  it('know a command the better, the closer the samples', () => {
    const sd = (gap: number) =>
      recordingParameters({ ...shape, changeGapsS: [gap] }, 0).find((p) => p.name === 'shift0')!.sd;
    expect(sd(1)).toBeGreaterThan(1 / Math.sqrt(12));
    expect(sd(0.1)).toBeLessThan(sd(1));
    expect(sd(0)).toBeGreaterThan(0);
  });

  it('areas spread twice as far as diameters', () => {
    const p = holePrior(2, 0.3);
    expect(p.sd).toBe(0.6);
    // discharge coefficient 0.61 of a thin sharp edge
    expect(p.centre).toBeCloseTo(0.61 * Math.PI * 1e-6, 12);
  });

  it('leave nothing at zero that a flow or time is divided by', () => {
    const q = baseQuantities(shape);
    for (const p of carParameters(CAR, c)) if (p.kind === 'log') expect(q[p.slot]).toBeGreaterThan(0);
    for (const p of recordingParameters(shape, 0)) if (p.kind === 'log') expect(q[p.slot]).toBeGreaterThan(0);
  });
});
