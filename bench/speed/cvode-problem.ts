import { antoineCoefficients } from '../../src/physics/fuel-vapour.ts';
import { pulseValveMeanArea, pulseValveOpenFraction } from '../../src/physics/pulse-valve.ts';
import type { NetworkEquations } from '../../src/simulation/network-equations.ts';
import type { Scenario } from '../../src/simulation/scenario.ts';
import type { Simulation } from '../../src/simulation/simulate.ts';

/** A stretch with constant commands. */
interface Stage {
  readonly endS: number;
  readonly commands: Readonly<Record<string, number>>;
}

/** Constant-command stretches of a scenario as it went (its step ends are known). */
function stagesOf(scenario: Scenario, run: Simulation): Stage[] {
  const stages: Stage[] = [];
  const commands: Record<string, number> = {};
  scenario.procedure.steps.forEach((step, i) => {
    const { fromS, toS } = run.steps[i]!;
    const times = new Set([toS]);
    for (const plan of Object.values(step.commands ?? {})) {
      if (typeof plan !== 'number') for (const point of plan) if (fromS + point.atS < toS) times.add(fromS + point.atS);
    }
    let startS = fromS;
    for (const endS of [...times].sort((a, b) => a - b)) {
      if (endS <= fromS) continue;
      for (const [id, plan] of Object.entries(step.commands ?? {})) {
        if (typeof plan === 'number') commands[id] = plan;
        else for (const point of plan) if (fromS + point.atS <= startS) commands[id] = point.value;
      }
      stages.push({ endS, commands: { ...commands } });
      startS = endS;
    }
  });
  return stages;
}

/** The flat problem that tools/cvode/vapour_network.c reads: constant conditions, no lobes, no boost. */
export function cvodeProblem(
  scenario: Scenario,
  run: Simulation,
  equations: NetworkEquations,
  x0: Float64Array,
  tolerances: Float64Array,
  watch: string,
  timesS: ArrayLike<number>,
  referenceGaugePa: ArrayLike<number>,
): string {
  const { network, conditions } = scenario;
  const { layout } = equations;
  const passages = network.passages.filter((p) => equations.flows.ids.includes(p.id));
  const stages = stagesOf(scenario, run);
  const lines: string[] = [];
  const put = (...values: number[]) =>
    lines.push(values.map((v) => (Number.isInteger(v) ? `${v}` : v.toPrecision(17))).join(' '));
  const n = layout.dynamicSize;
  put(n, network.spaces.length, passages.length, network.sensors.length, stages.length, timesS.length);
  const constant = (s: unknown, fallback: number) => (typeof s === 'number' ? s : fallback);
  put(
    constant(conditions.ambientAbsPa, Number.NaN),
    constant(conditions.ambientTemperatureK, Number.NaN),
    constant(conditions.manifoldAbsPa, Number.NaN),
    equations.gas.vapourMolarMass,
    constant(conditions.fuelDrawM3PerS, 0),
    layout.nodeIndex.get(watch)!,
  );
  network.spaces.forEach((s, i) => {
    const v = new Array<number>(11).fill(0);
    if (s.kind === 'gas') v[0] = s.volumeM3;
    else if (s.kind === 'bed') v.splice(0, 5, s.volumeM3, s.carbonKg, s.rateHz, s.heatCapacityJPerK, s.toAmbientWPerK);
    else {
      const { a, bRankine } = antoineCoefficients(s.fuel.reidVapourPressurePa);
      v.splice(
        0,
        11,
        s.shellVolumeM3 + s.neckVolumeM3,
        s.fuel.densityKgPerM3,
        s.massTransferMPerS * s.surfaceAreaM2,
        s.fuel.vapourPressureFactor,
        a,
        bRankine,
        s.gasToWallWPerK,
        s.gasToFuelWPerK,
        s.fuelToAmbientWPerK,
        s.shellHeatCapacityJPerK,
        s.fuel.heatCapacityJPerKgK,
      );
    }
    put({ gas: 0, tank: 1, bed: 2 }[s.kind], layout.base[i]!, ...v);
  });
  for (const p of passages) {
    const ends = [layout.nodeIndex.get(p.from)!, layout.nodeIndex.get(p.to)!];
    if (p.kind === 'bed') put(1, ...ends, p.linearPaSPerKg, p.quadraticPaS2PerKg2, 0, 0, 0);
    else if (p.kind === 'relief') {
      put(2, ...ends, p.pressureSettingPa, p.vacuumSettingPa, p.openingSpanPa, p.openAreaM2, p.shutAreaM2);
    } else if (p.kind === 'orifice') put(0, ...ends, 0, 0, 0, 0, 0);
    else throw new Error(`the C program has no passage of kind '${p.kind}' (${p.id})`);
  }
  for (const s of network.sensors) put(layout.nodeIndex.get(s.space)!, s.lagS);
  for (const stage of stages) {
    const areas = passages.map((p) => {
      if (p.kind !== 'orifice') return 0;
      if (p.actuation === undefined) return p.openAreaM2;
      const command = stage.commands[p.actuation.command] ?? 0;
      const open = p.actuation.opens ? command : 1 - command;
      const share =
        p.pulse === undefined
          ? open
          : pulseValveOpenFraction(open, p.pulse.frequencyHz, p.pulse.openDelayS, p.pulse.closeDelayS);
      return pulseValveMeanArea(share, p.openAreaM2, p.shutAreaM2);
    });
    put(stage.endS, ...areas);
  }
  for (let i = 0; i < n; i++) put(x0[i]!, tolerances[i]!);
  for (let i = 0; i < timesS.length; i++) put(timesS[i]!, referenceGaugePa[i]!);
  return `${lines.join('\n')}\n`;
}
