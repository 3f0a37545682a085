/**
 * The two-space model of the vapour system that the finding fits: tank and canister side, joined by a pipe.
 *
 * It is the network of `simulation/` reduced for speed: the canister bed is one isothermal space whose
 * volume counts the gas that the carbon gives up, hoses carry no states, and pressures advance by an
 * second-order backward differentiation (a 2 x 2 Newton iteration with exact derivatives) on fixed steps, restarting
 * with implicit Euler at every command change. A test holds it against the full network.
 * Variable-step BDF2 as an Euler step: X* = ((1+w)^2 X_n - w^2 X_{n-1}) / (1+2w), h* = h (1+w) / (1+2w), w = h / h_prev.
 * Source: Hairer and Wanner, Solving Ordinary Differential Equations II, ch. V.1.
 *
 * Tank: n = moles of gas, y = mole fraction of fuel vapour, T = temperature, p = n R T / V.
 *   dn/dt     = leak + relief + evaporation - pipe
 *   d(n y)/dt = evaporation - y (outflow)
 *   n cv dT/dt = sum of enthalpy carried in and out + wallHeat (Twall - T)
 * Canister side: V_c / (R T_a) dp_c/dt = pipe + vent - purge - slow uptake.
 * Passages: sharp-edged orifice, n' = a sqrt(2 p_mean / (R T M)) dp / sqrt(|dp| + 2 Pa): within 1 % of the
 * isentropic law below 3 kPa and smooth through zero; where the vent path is open its bed and filter make the 2 Pa a quantity of
 * its own. Purge valve: isentropic towards the manifold, choked
 * below the critical ratio.
 */

import type { Drive } from './drive.ts';
import * as quantities from './quantities.ts';
import * as constants from './two-space-constants.ts';

// taken out once: loaders that keep live bindings make each look-up of an import a call, too dear in the loops below
const {
  CHOKED,
  CONVERGED_PA,
  CRITICAL,
  CV_AIR,
  CV_VAPOUR,
  DUTY_JUMP,
  LAMINAR_PA,
  LOWEST_PRESSURE,
  M_AIR,
  M_VAPOUR,
  MOST_GROWTH,
  MOST_NEWTON_STEPS,
  NEARLY_EQUAL,
  R,
  SMALLEST_VOLUME,
  UNDAMPED,
} = constants;
const { DRIFT_SLOTS, Q } = quantities;

/**
 * Numbers that a step leaves in a trace, in this order: step ratio; effective step [s]; pressures of tank, canister side and slow
 * carbon at its end [Pa]; composition and temperature that the flows were found with; flows leak, relief, evaporation, pipe, vent,
 * purge [mol/s]; purge area [m2]; gas volume [m3]; vapour pressure [Pa]; wall [K]; ambient [Pa]; nozzle's flow [m3/s]; and moles,
 * composition, temperature and lagged reading at the end.
 */
export const TRACE_STRIDE = 23;

/** Flows at each observation [mol/s]. */
export interface PurgeFlows {
  /** Gas through the purge valve. */
  readonly purge: Float64Array;
  /** Fuel vapour that comes out of the tank towards the canister. */
  readonly vapourFromTank: Float64Array;
}

/**
 * Runs the model through a drive.
 *
 * @param q quantities by slot of `Q` [SI units as listed there]
 * @param drive the recording's steps
 * @param out sensor reading at each observation [Pa gauge], length at least `drive.observationCount`
 * @param flows if given, receives the molar flows that the trims feel [mol/s]
 * @param trace if given, receives what `tangents` needs of each step, `TRACE_STRIDE` numbers a step
 */
export function runTwoSpace(
  q: Float64Array,
  drive: Drive,
  out: Float64Array,
  flows?: PurgeFlows,
  trace?: Float64Array,
): void {
  const { dtS, duty, ventShut, manifoldAbsPa, fillM3PerS, full, observation, shift, warmPosition, driftPosition } =
    drive;
  const ambientRate = q[Q.ambientRate]!;
  let pa = drive.ambientAbsPa - ambientRate * drive.toMiddleS;
  const ta = drive.ambientTemperatureK;
  const lo = drive.clipLowGaugePa;
  const hi = drive.clipHighGaugePa;
  const vc = q[Q.canisterVolume]!;
  const leakArea = q[Q.leakArea]!;
  const ventShutArea = q[Q.ventShutArea]!;
  const ventOpenArea = q[Q.ventOpenArea]!;
  const pipeOpen = q[Q.pipeArea]!;
  const pipeFull = q[Q.fullPipeArea]!;
  const purgeArea = q[Q.purgeArea]!;
  const seepArea = q[Q.seepArea]!;
  const psat0 = q[Q.vapourPressure]!;
  const kA = q[Q.evaporation]!;
  const hA = q[Q.wallHeat]!;
  let openVacuum = pa - q[Q.reliefVacuum]!;
  let openPressure = pa + q[Q.reliefPressure]!;
  const reliefSlope = q[Q.reliefSlope]!;
  const ventLaminarOpen = q[Q.ventLaminar]!;
  const slowVolume = q[Q.slowVolume]!;
  const slowTime = q[Q.slowTime]!;
  const offset = q[Q.offset]!;
  const gain = q[Q.gain]!;
  const lag = q[Q.lag]!;
  const displacement = q[Q.displacement]!;
  const nozzleRise = q[Q.nozzleRise]!;
  const sensitivity = drive.vapourSensitivityPerK;

  let v = q[Q.tankVolume]!;
  let wall = drive.tankTemperatureK;
  let t = wall;
  let p = pa + q[Q.initialGauge]!;
  let pc = p;
  let pSlow = p;
  let fuelWarm = 0;
  let pouring = 0;
  let psat = psat0;
  let n = (p * v) / (R * t);
  let y = (psat0 - q[Q.deficit]!) / p;
  if (y < 0) y = 0;
  else if (y > 0.95) y = 0.95;
  let reading = p - pa;
  // the state one step earlier
  let nBefore = n;
  let vapourBefore = n * y;
  let yBefore = y;
  let tBefore = t;
  let tRiseBefore = 0;
  let pcBefore = pc;
  let pSlowBefore = pSlow;
  let readingBefore = reading;
  let hBefore = 0;
  let dutyBefore = duty[0] ?? 0;
  let commandBefore = -1;
  const rta = R * ta;
  // the parts of the orifice law that the pressures do not touch, for gas at ambient conditions
  const kAir = Math.sqrt(2 / (rta * M_AIR));
  const kPurge = 1 / Math.sqrt(rta * M_AIR);
  const vca = vc / rta;

  for (let i = 0; i < drive.stepCount; i++) {
    let h = dtS[i]!;
    const s = shift[i]!;
    if (s !== 0) {
      h += s > 0 ? q[Q.shift0 + s - 1]! : -q[Q.shift0 - s - 1]!;
      if (h < 1e-3) h = 1e-3;
    }
    const command = ventShut[i]! + 2 * full[i]! + (fillM3PerS[i]! > 0 ? 4 : 0);
    const dutyNow = duty[i]!;
    const jump = dutyNow - dutyBefore;
    const restart =
      hBefore === 0 || command !== commandBefore || jump > DUTY_JUMP || jump < -DUTY_JUMP || h > MOST_GROWTH * hBefore;
    commandBefore = command;
    dutyBefore = dutyNow;
    const ratio = restart ? 0 : h / hBefore;
    const forward = ((1 + ratio) * (1 + ratio)) / (1 + 2 * ratio);
    const back = (ratio * ratio) / (1 + 2 * ratio);
    hBefore = h;
    if (ambientRate !== 0) {
      pa += ambientRate * h;
      openVacuum = pa - q[Q.reliefVacuum]!;
      openPressure = pa + q[Q.reliefPressure]!;
    }
    // fuel and wall warm or cool together
    const w = warmPosition[i]!;
    const k = w | 0;
    const r0 = q[Q.warm0 + k]!;
    const rate = w > k ? r0 + (w - k) * (q[Q.warm0 + k + 1]! - r0) : r0;
    if (rate !== 0) {
      fuelWarm += rate * h;
      wall += rate * h;
      psat = psat0 * Math.exp(sensitivity * fuelWarm);
    }
    // the flow builds up as the nozzle is opened; its own shut-off is sudden
    const poured = fillM3PerS[i]!;
    pouring = poured > 0 ? pouring + (poured - pouring) * (h / (nozzleRise + h)) : 0;
    let liquid = pouring * displacement;
    if (liquid > 0) {
      if (v - liquid * h > SMALLEST_VOLUME) v -= liquid * h;
      else liquid = 0;
    }
    // history combined; from here on an Euler step of length h
    const nStart = forward * n - back * nBefore;
    const vapourStart = forward * n * y - back * vapourBefore;
    const tStart = forward * t - back * tBefore;
    const pcStart = forward * pc - back * pcBefore;
    const pSlowStart = forward * pSlow - back * pSlowBefore;
    const readingStart = forward * reading - back * readingBefore;
    // composition and temperature at the end of the step, extrapolated: the flows need them before they are solved for
    const yNext = y + ratio * (y - yBefore);
    const tRise = t - tBefore;
    // a temperature that swings to and fro, as behind an opening that changes all the gas in a step, would be extrapolated ever further
    const tNext = tRise * tRiseBefore < 0 ? t : t + ratio * tRise;
    tRiseBefore = tRise;
    nBefore = n;
    vapourBefore = n * y;
    yBefore = y;
    tBefore = t;
    pcBefore = pc;
    pSlowBefore = pSlow;
    readingBefore = reading;
    h *= (1 + ratio) / (1 + 2 * ratio);
    y = yNext > 0 ? yNext : 0;
    t = tNext;
    const isShut = ventShut[i] === 1;
    const ventArea = isShut ? ventShutArea : ventOpenArea;
    const ventLaminar = isShut ? LAMINAR_PA : ventLaminarOpen;
    const pipeArea = full[i] === 1 ? pipeFull : pipeOpen;
    let purge = seepArea;
    if (dutyNow > 0) {
      const at = driftPosition[i]!;
      let flow = purgeArea * dutyNow;
      if (at >= 0) {
        const j = at >= DRIFT_SLOTS - 1 ? DRIFT_SLOTS - 2 : at | 0;
        const g0 = q[Q.drift0 + j]!;
        const g = g0 + (at - j) * (q[Q.drift0 + j + 1]! - g0);
        if (g !== 0) flow *= Math.exp(g);
      }
      purge += flow;
    }
    const pm = manifoldAbsPa[i]!;
    const kTank = Math.sqrt(2 / (R * t * (M_AIR + y * (M_VAPOUR - M_AIR))));
    const vrt = v / (R * t);
    const kE = kA / (R * t);
    const slow = (slowVolume / rta) * (h / (slowTime + h));

    let leak = 0;
    let pipe = 0;
    let vent = 0;
    let purgeFlow = 0;
    let evap = 0;
    let relief = 0;
    for (let it = 0; it < MOST_NEWTON_STEPS; it++) {
      // hole, positive inwards
      const dl = pa - p;
      const al = dl < 0 ? -dl : dl;
      const sl = Math.sqrt(al + LAMINAR_PA);
      const kl = (leakArea * (dl > 0 ? kAir : kTank) * Math.sqrt(0.5 * (pa + p))) / sl;
      leak = kl * dl;
      const dLeak = (-kl * (0.5 * al + LAMINAR_PA)) / (al + LAMINAR_PA);
      // cap relief
      relief = 0;
      let dRelief = 0;
      if (p < openVacuum) {
        relief = reliefSlope * (openVacuum - p);
        dRelief = -reliefSlope;
      } else if (p > openPressure) {
        relief = reliefSlope * (openPressure - p);
        dRelief = -reliefSlope;
      }
      evap = kE * (psat - y * p);
      // pipe, positive from tank to canister
      const dq = p - pc;
      const aq = dq < 0 ? -dq : dq;
      const sq = Math.sqrt(aq + LAMINAR_PA);
      const kq = (pipeArea * (dq > 0 ? kTank : kAir) * Math.sqrt(0.5 * (pc + p))) / sq;
      pipe = kq * dq;
      const dPipe = (kq * (0.5 * aq + LAMINAR_PA)) / (aq + LAMINAR_PA);
      // vent, positive inwards
      const dv = pa - pc;
      const av = dv < 0 ? -dv : dv;
      const kv = (ventArea * kAir * Math.sqrt(0.5 * (pa + pc))) / Math.sqrt(av + ventLaminar);
      vent = kv * dv;
      const dVent = (-kv * (0.5 * av + ventLaminar)) / (av + ventLaminar);
      // purge, positive towards the manifold
      let dPurge: number;
      const r = pm / pc;
      if (r <= CRITICAL) {
        dPurge = purge * kPurge * CHOKED;
        purgeFlow = dPurge * pc;
      } else if (r < NEARLY_EQUAL) {
        const l = Math.log(r);
        const a = Math.exp(1.4285714285714286 * l);
        const b = a * Math.exp(0.2857142857142857 * l);
        const psi = Math.sqrt(7 * (a - b));
        purgeFlow = purge * kPurge * pc * psi;
        dPurge = purge * kPurge * (psi - (3.5 * (1.4285714285714286 * a - 1.7142857142857142 * b)) / psi);
      } else {
        const dm = pc - pm;
        const am = dm < 0 ? -dm : dm;
        const km = (purge * kAir * Math.sqrt(0.5 * (pc + pm))) / Math.sqrt(am + LAMINAR_PA);
        purgeFlow = km * dm;
        dPurge = (km * (0.5 * am + LAMINAR_PA)) / (am + LAMINAR_PA);
      }

      const f1 = nStart + h * (leak + relief + evap - pipe) - p * vrt;
      const f2 = vca * (pcStart - pc) + h * (pipe + vent - purgeFlow) - slow * (pc - pSlowStart);
      const j11 = h * (dLeak + dRelief - kE * y - dPipe) - vrt;
      const j12 = h * dPipe;
      const j22 = -vca + h * (dVent - dPipe - dPurge) - slow;
      const det = j11 * j22 - j12 * j12;
      const e1 = (f1 * j22 - f2 * j12) / det;
      const e2 = (j11 * f2 - j12 * f1) / det;
      // at a square root Newton may leap from one side to the other for ever: half a step lands on it
      const part = it < UNDAMPED ? 1 : 0.5;
      p -= part * e1;
      pc -= part * e2;
      if (p < LOWEST_PRESSURE) p = LOWEST_PRESSURE;
      if (pc < LOWEST_PRESSURE) pc = LOWEST_PRESSURE;
      if (e1 < CONVERGED_PA && e1 > -CONVERGED_PA && e2 < CONVERGED_PA && e2 > -CONVERGED_PA) break;
    }
    pSlow = pSlowStart + (pc - pSlowStart) * (h / (slowTime + h));

    if (trace) {
      const at = i * TRACE_STRIDE;
      trace[at] = ratio;
      trace[at + 1] = h;
      trace[at + 2] = p;
      trace[at + 3] = pc;
      trace[at + 4] = pSlow;
      trace[at + 5] = y;
      trace[at + 6] = t;
      trace[at + 7] = leak;
      trace[at + 8] = relief;
      trace[at + 9] = evap;
      trace[at + 10] = pipe;
      trace[at + 11] = vent;
      trace[at + 12] = purgeFlow;
      trace[at + 13] = purge;
      trace[at + 14] = v;
      trace[at + 15] = psat;
      trace[at + 16] = wall;
      trace[at + 17] = pa;
      trace[at + 18] = pouring;
    }

    // moles, composition and heat of the tank from the flows just found
    const airIn = (leak > 0 ? leak : 0) + (relief > 0 ? relief : 0) + (pipe < 0 ? -pipe : 0);
    const out_ = (leak < 0 ? -leak : 0) + (relief < 0 ? -relief : 0) + (pipe > 0 ? pipe : 0);
    const vapour = vapourStart + h * (evap - out_ * y);
    // from the converged pressure: the flows above belong to the iterate before the last correction
    n = p * vrt;
    y = vapour / n;
    if (y < 0) y = 0;
    const heatCapacity = n * (CV_AIR + y * (CV_VAPOUR - CV_AIR));
    const carried =
      airIn * (CV_AIR * (ta - t) + R * ta) + evap * (CV_VAPOUR * (wall - t) + R * wall) - out_ * R * t + p * liquid;
    // carried is taken at the extrapolated temperature, the wall implicitly
    t = (tStart * heatCapacity + h * (carried + hA * wall)) / (heatCapacity + h * hA);
    // read before the gas has warmed or cooled further: what the next step's flows will relieve must not show
    reading = readingStart + (p - pa - readingStart) * (h / (lag + h));
    p = (n * R * t) / v;
    if (trace) {
      const at = i * TRACE_STRIDE;
      trace[at + 19] = n;
      trace[at + 20] = y;
      trace[at + 21] = t;
      trace[at + 22] = reading;
    }
    const o = observation[i]!;
    if (o >= 0) {
      const shown = offset + gain * reading;
      out[o] = shown < lo ? lo : shown > hi ? hi : shown;
      if (flows) {
        flows.purge[o] = purgeFlow;
        flows.vapourFromTank[o] = pipe > 0 ? pipe * y : 0;
      }
    }
  }
}
