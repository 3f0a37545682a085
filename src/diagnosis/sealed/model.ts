/**
 * The reduced model of a sealed tank: tank and canister side, parted by the isolation valve.
 *
 * Tank: n moles, vapour fraction y, temperature T; canister side: one isothermal space of pressure p_c.
 *   n' = hole + evaporation - F,   n y' and n c_v T' as in `two-space.ts`
 *   (V_c / R T_a) p_c' = F (1 - (1 - past) y_h) + vent + hole - purge - slow gas of the carbon
 * F is the flow through the isolation valve, y_h the vapour that reaches the carbon through line and head. Fuel and wall
 * follow the recorded temperatures, so that a sound tank breathes with the day and a leaking one does not.
 * Orifices: n' = a sqrt(2 p_mean / (R T M)) dp / sqrt(|dp| + 2 Pa), within 1 % of the isentropic law below 3 kPa and 3 % at
 * 40 kPa. The way from the canister to ambient leads through the bed, whose resistance is linear. Purge: isentropic towards the
 * manifold, choked below the critical ratio. Backward differences of second order.
 */
import * as constants from '../model/two-space-constants.ts';
import * as passage from '../single-run/orifice.ts';
import type { SealedDrive } from './drive.ts';
import * as quantities from './quantities.ts';

// taken out once: loaders that keep live bindings make each look-up of an import a call, too dear in the loops below
const { CHOKED, CONVERGED_PA, CRITICAL, CV_AIR, CV_VAPOUR, GAMMA, LOWEST_PRESSURE, M_AIR, M_VAPOUR, NEARLY_EQUAL, R } =
  constants;
const { FLOW, orifice, orificeBehindBed, SLOPE, through } = passage;
const { S } = quantities;

/** Numerical limits, outside the range of use. */
const MOST_NEWTON_STEPS = 20;
const LARGEST_CORRECTION_PA = 10e3;
/** Relief of a sealed tank [Pa], from memory, and its slope once open [mol/(s Pa)], judgement. */
const RELIEF_VACUUM_PA = 15e3;
const RELIEF_PRESSURE_PA = 40e3;
const RELIEF_SLOPE = 1e-6;

/** Flow of the purge valve from canister pressure to the manifold, and its slope by the canister pressure. */
function purgeValve(area: number, pc: number, pm: number, rta: number, kAir: number): void {
  const r = pm / pc;
  if (r >= NEARLY_EQUAL) {
    orifice(area * kAir, pc - pm, 0.5 * (pc + pm));
    return;
  }
  const k = area / Math.sqrt(rta * M_AIR);
  if (r <= CRITICAL) {
    through[SLOPE] = k * CHOKED;
    through[FLOW] = through[SLOPE]! * pc;
    return;
  }
  const a = r ** (2 / GAMMA);
  const b = a * r ** ((GAMMA - 1) / GAMMA);
  const psi = Math.sqrt(7 * (a - b));
  through[FLOW] = k * pc * psi;
  through[SLOPE] = k * (psi - (3.5 * ((2 / GAMMA) * a - ((GAMMA + 1) / GAMMA) * b)) / psi);
}

/**
 * Runs the model through a recording's commands.
 *
 * @param q quantities by slot of `S` [SI units as listed there]
 * @param d the recording's steps
 * @param out readings of the tank's and the canister's sensor at their observations [Pa gauge], as far as recorded
 */
export function runSealed(q: Float64Array, d: SealedDrive, out: readonly Float64Array[]): void {
  const ta = d.ambientTemperatureK;
  const rta = R * ta;
  const kAir = Math.sqrt(2 / (rta * M_AIR));
  const v = q[S.tankVolume]!;
  const vca = q[S.canisterVolume]! / rta;
  const psat0 = q[S.vapourPressure]!;
  const kA = q[S.evaporation]!;
  const hA = q[S.wallHeat]!;
  const uptake = 1 - Math.min(1, q[S.past]!);
  const slowTime = q[S.slowTime]!;
  const stuckShut = q[S.stuckShut]! > 0.5;
  const ventStays = q[S.ventStays]! > 0.5;
  const frozen = q[S.frozen]! > 0.5;
  const sideFrozen = q[S.canisterFrozen]! > 0.5;
  let pa = d.ambientAbsPa[0] ?? 101325;
  const headMoles = (q[S.headVolume]! * pa) / rta;
  let t = d.tankTemperatureK;
  let p = Math.max(LOWEST_PRESSURE, pa + quantities.initialGauge(q));
  let pc = pa;
  let pSlow = pc;
  let n = (p * v) / (R * t);
  let y = Math.min(0.95, Math.max(0, (psat0 - q[S.deficit]!) / p));
  let yHead = y / (1 + Math.exp(-q[S.headVapour]!));
  let warmed = 0;
  let readTank = q[S.woken]! * (p - pa);
  let readSide = 0;
  let nBefore = n;
  let pcBefore = pc;
  let vapourBefore = n * y;
  let tBefore = t;

  for (let i = 0; i < d.steps.count; i++) {
    const dt = d.steps.dtS[i]!;
    const ratio = d.steps.ratio[i]!;
    const h = (dt * (1 + ratio)) / (1 + 2 * ratio);
    const now = ((1 + ratio) * (1 + ratio)) / (1 + 2 * ratio);
    const before = now - 1;
    const n0 = now * n - before * nBefore;
    const pc0 = now * pc - before * pcBefore;
    const vapour0 = now * n * y - before * vapourBefore;
    const t0 = now * t - before * tBefore;
    nBefore = n;
    pcBefore = pc;
    vapourBefore = n * y;
    tBefore = t;

    pa = d.ambientAbsPa[i]!;
    warmed += q[S.warm]! * dt;
    const byAmbient = q[S.follow]! * d.ambientSwingK[i]!;
    const fuelRise = warmed + (d.fuelSwingK ? d.fuelSwingK[i]! : byAmbient);
    const wall = d.tankTemperatureK + 0.5 * (fuelRise + byAmbient);
    const psat = psat0 * Math.exp(d.vapourSensitivityPerK * fuelRise);
    const isolation = d.isolationOpen[i] === 1 && !stuckShut ? q[S.isolationOpenArea]! : q[S.isolationShutArea]!;
    const sideArea = q[S.sideHole]! + (d.ventShut[i] === 1 && !ventStays ? 0 : q[S.ventOpenArea]!);
    const purgeArea = q[S.seepArea]! + d.duty[i]! * q[S.purgeArea]!;
    const pm = d.manifoldAbsPa[i]!;
    const kTank = Math.sqrt(2 / (R * t * (M_AIR + y * (M_VAPOUR - M_AIR))));
    const capacity = n * (CV_AIR + y * (CV_VAPOUR - CV_AIR));
    const kE = kA / (R * t);
    const slow = (q[S.slowVolume]! / rta) * (dt / (slowTime + dt));
    let hole = 0;
    let evap = 0;
    let f = 0;
    let vrt = 0;
    let purge = 0;
    let tEnd = t;
    let outMix = 0;
    for (let it = 0; it < MOST_NEWTON_STEPS; it++) {
      orifice(q[S.tankHole]! * (p > pa ? kTank : kAir), pa - p, 0.5 * (pa + p));
      hole = through[FLOW]!;
      let dHole = -through[SLOPE]!;
      if (p < pa - RELIEF_VACUUM_PA) {
        hole += RELIEF_SLOPE * (pa - RELIEF_VACUUM_PA - p);
        dHole -= RELIEF_SLOPE;
      } else if (p > pa + RELIEF_PRESSURE_PA) {
        hole += RELIEF_SLOPE * (pa + RELIEF_PRESSURE_PA - p);
        dHole -= RELIEF_SLOPE;
      }
      evap = kE * (psat - y * p);
      orifice(isolation * (p > pc ? kTank : kAir), p - pc, 0.5 * (p + pc));
      f = through[FLOW]!;
      const dF = through[SLOPE]!;
      // the pressure is solved with the temperature that these flows leave; its slope is small enough to leave out
      const inAir = (hole > 0 ? hole : 0) + (f < 0 ? -f : 0);
      outMix = (hole < 0 ? -hole : 0) + (f > 0 ? f : 0);
      const heat = inAir * (CV_AIR * (ta - t) + R * ta) + evap * (CV_VAPOUR * (wall - t) + R * wall) - outMix * R * t;
      tEnd = t0 + (h * (heat + hA * (wall - t0))) / (capacity + h * hA);
      vrt = v / (R * tEnd);
      orificeBehindBed(sideArea * kAir, (q[S.bed]! * rta) / pa, pa - pc, 0.5 * (pa + pc));
      const vent = through[FLOW]!;
      const dVent = -through[SLOPE]!;
      purgeValve(purgeArea, pc, pm, rta, kAir);
      purge = through[FLOW]!;
      const pass = f > 0 ? 1 - uptake * yHead : 1;
      const f1 = n0 + h * (hole + evap - f) - p * vrt;
      const f2 = vca * (pc0 - pc) + h * (pass * f + vent - through[FLOW]!) - slow * (pc - pSlow);
      const j11 = h * (dHole - kE * y - dF) - vrt;
      const j12 = h * dF;
      const j21 = h * pass * dF;
      const j22 = -vca + h * (dVent - pass * dF - through[SLOPE]!) - slow;
      const det = j11 * j22 - j12 * j21;
      let e1 = (f1 * j22 - f2 * j12) / det;
      let e2 = (j11 * f2 - j21 * f1) / det;
      e1 = Math.max(-LARGEST_CORRECTION_PA, Math.min(LARGEST_CORRECTION_PA, e1));
      e2 = Math.max(-LARGEST_CORRECTION_PA, Math.min(LARGEST_CORRECTION_PA, e2));
      p = Math.max(LOWEST_PRESSURE, p - e1);
      pc = Math.max(LOWEST_PRESSURE, pc - e2);
      if (e1 < CONVERGED_PA && e1 > -CONVERGED_PA && e2 < CONVERGED_PA && e2 > -CONVERGED_PA) break;
    }
    pSlow += (pc - pSlow) * (dt / (slowTime + dt));
    // line and head: vapour on its way to the carbon, or swept back by air
    const moved = f * dt;
    if (moved > 0) yHead = (headMoles * yHead + moved * y) / (headMoles + moved);
    else yHead = (headMoles * yHead) / (headMoles - moved);
    // purge draws cleaned gas from the carbon through the head
    if (purge > 0) yHead *= headMoles / (headMoles + purge * dt);

    const vapour = vapour0 + h * (evap - outMix * y);
    n = p * vrt;
    y = Math.min(0.95, Math.max(0, vapour / n));
    t = tEnd;

    readTank += ((p - pa - readTank) * dt) / (q[S.lag]! + dt);
    readSide += ((pc - pa - readSide) * dt) / (q[S.canisterLag]! + dt);
    for (let c = 0; c < out.length; c++) {
      const o = d.steps.observation[c]![i]!;
      if (o < 0) continue;
      const shown = d.seesTank[c]!
        ? frozen
          ? q[S.level]!
          : q[S.offset]! + q[S.gain]! * readTank
        : sideFrozen
          ? q[S.canisterLevel]!
          : q[S.canisterOffset]! + q[S.canisterGain]! * readSide;
      const r = d.rails[c]!;
      out[c]![o] = shown < r.low ? r.low : shown > r.high ? r.high : shown;
    }
  }
}
