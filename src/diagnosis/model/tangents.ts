/**
 * Exact derivatives of the two-space model's readings, by carrying the derivative of every state along the steps that
 * `runTwoSpace` has taken (forward mode). The equations are those of `two-space.ts`, step by step and in its order; a test holds
 * the derivatives against differences of whole runs. One pass costs about what three runs do, whatever the number of derivatives.
 * Source: Griewank and Walther, Evaluating Derivatives, 2nd ed. 2008, ch. 3; at a step's end the two pressures solve
 * F(x, u) = 0, so dx = -(dF/dx)^-1 dF/du (implicit function theorem).
 */
import type { Drive } from './drive.ts';
import * as quantities from './quantities.ts';
import * as twoSpace from './two-space.ts';
import * as constants from './two-space-constants.ts';

// taken out once: loaders that keep live bindings make each look-up of an import a call, too dear in the loops below
const { CRITICAL, CV_AIR, CV_VAPOUR, LAMINAR_PA, M_AIR, M_VAPOUR, NEARLY_EQUAL, R } = constants;
const { DRIFT_SLOTS, Q } = quantities;
const { TRACE_STRIDE } = twoSpace;

/** States whose derivatives are carried from step to step, side by side for each slot; those with B are one step older. */
const D_P = 0;
const D_PC = 1;
const D_SLOW = 2;
const D_T = 3;
const D_N = 4;
const D_Y = 5;
const D_V = 6;
const D_WALL = 7;
const D_WARM = 8;
const D_PA = 9;
const D_POUR = 10;
const D_READING = 11;
const D_NB = 12;
const D_VAPB = 13;
const D_YB = 14;
const D_TB = 15;
const D_PCB = 16;
const D_SLOWB = 17;
const D_READINGB = 18;
const D_HB = 19;
const ROWS = 20;

/**
 * @param q quantities that the run was made with
 * @param drive its drive
 * @param trace what the run left, `TRACE_STRIDE` numbers a step
 * @param slots slots of `Q` to differentiate by
 * @param out receives the derivative of each reading by each slot: `out[at[j] + observation]` [Pa per unit of the slot]
 * @param at where each slot's column begins in `out`
 */
export function tangents(
  q: Float64Array,
  drive: Drive,
  trace: Float64Array,
  slots: ArrayLike<number>,
  out: Float64Array,
  at: ArrayLike<number>,
): void {
  const { duty, ventShut, manifoldAbsPa, fillM3PerS, full, observation, shift, warmPosition, driftPosition } = drive;
  const count = slots.length;
  const d = new Float64Array(count * ROWS);

  const ta = drive.ambientTemperatureK;
  const rta = R * ta;
  const lo = drive.clipLowGaugePa;
  const hi = drive.clipHighGaugePa;
  const kAir = Math.sqrt(2 / (rta * M_AIR));
  const sensitivity = drive.vapourSensitivityPerK;
  const reliefSlope = q[Q.reliefSlope]!;
  const slowVolume = q[Q.slowVolume]!;
  const slowTime = q[Q.slowTime]!;
  const lag = q[Q.lag]!;
  const rise = q[Q.nozzleRise]!;
  const displacement = q[Q.displacement]!;
  const kA = q[Q.evaporation]!;
  const hA = q[Q.wallHeat]!;
  const gain = q[Q.gain]!;
  const offset = q[Q.offset]!;
  const ambientRate = q[Q.ambientRate]!;
  const psat0 = q[Q.vapourPressure]!;
  const purgeArea = q[Q.purgeArea]!;
  const vca = q[Q.canisterVolume]! / rta;

  // the state before the first step, as the run sets it
  const pa0 = drive.ambientAbsPa - ambientRate * drive.toMiddleS;
  let v = q[Q.tankVolume]!;
  let t = drive.tankTemperatureK;
  let p = pa0 + q[Q.initialGauge]!;
  let pc = p;
  let pSlow = p;
  let n = (p * v) / (R * t);
  const yStart = (psat0 - q[Q.deficit]!) / p;
  let y = Math.min(0.95, Math.max(0, yStart));
  let reading = p - pa0;
  let pouring = 0;
  let nB = n;
  let yB = y;
  let tB = t;
  let pcB = pc;
  let pSlowB = pSlow;
  let readingB = reading;
  let stepB = 0;
  for (let j = 0; j < count; j++) {
    const slot = slots[j]!;
    const b = j * ROWS;
    if (slot === Q.ambientRate) d[b + D_PA]! = -drive.toMiddleS;
    const start = (slot === Q.initialGauge ? 1 : 0) + d[b + D_PA]!;
    d[b + D_P]! = start;
    d[b + D_PC]! = start;
    d[b + D_SLOW]! = start;
    d[b + D_READING]! = start - d[b + D_PA]!;
    d[b + D_V]! = slot === Q.tankVolume ? 1 : 0;
    d[b + D_N]! = (start * v + p * d[b + D_V]!) / (R * t);
    if (yStart > 0 && yStart < 0.95) {
      d[b + D_Y]! = ((slot === Q.vapourPressure ? 1 : slot === Q.deficit ? -1 : 0) - y * start) / p;
    }
    d[b + D_NB]! = d[b + D_N]!;
    d[b + D_VAPB]! = y * d[b + D_N]! + n * d[b + D_Y]!;
    d[b + D_YB]! = d[b + D_Y]!;
    d[b + D_PCB]! = start;
    d[b + D_SLOWB]! = start;
    d[b + D_READINGB]! = d[b + D_READING]!;
  }

  for (let i = 0; i < drive.stepCount; i++) {
    const k = i * TRACE_STRIDE;
    const r = trace[k]!;
    const h = trace[k + 1]!;
    const pEnd = trace[k + 2]!;
    const pcEnd = trace[k + 3]!;
    const slowEnd = trace[k + 4]!;
    const yNext = trace[k + 5]!;
    const tNext = trace[k + 6]!;
    const leak = trace[k + 7]!;
    const relief = trace[k + 8]!;
    const evap = trace[k + 9]!;
    const pipe = trace[k + 10]!;
    const vent = trace[k + 11]!;
    const purgeFlow = trace[k + 12]!;
    const purge = trace[k + 13]!;
    const vEnd = trace[k + 14]!;
    const psat = trace[k + 15]!;
    const wall = trace[k + 16]!;
    const pa = trace[k + 17]!;
    const pouringEnd = trace[k + 18]!;
    const nEnd = trace[k + 19]!;
    const yEnd = trace[k + 20]!;
    const tEnd = trace[k + 21]!;
    const readingEnd = trace[k + 22]!;

    // the step itself
    const w2 = 1 + 2 * r;
    const forward = ((1 + r) * (1 + r)) / w2;
    const back = (r * r) / w2;
    const growth = (1 + r) / w2;
    const step = h / growth;
    const dHistory = (2 * r * (1 + r)) / (w2 * w2);
    const dGrowth = -1 / (w2 * w2);
    const vap = n * y;
    const vapB = nB * yB;
    const s = shift[i]!;
    // a shift that would leave no step holds it at its floor, where it does not move
    const movable = s !== 0 && step > 1.0001e-3 ? (s > 0 ? s : -s) : 0;
    const shiftSlot = movable > 0 ? Q.shift0 + movable - 1 : -1;
    const shiftSign = s > 0 ? 1 : -1;
    // fuel and wall
    const wp = warmPosition[i]!;
    const wk = wp | 0;
    const share = wp - wk;
    const r0 = q[Q.warm0 + wk]!;
    const warmRate = share > 0 ? r0 + share * (q[Q.warm0 + wk + 1]! - r0) : r0;
    // liquid
    const poured = fillM3PerS[i]!;
    const build = step / (rise + step);
    const filling = poured > 0;
    const liquid = filling && vEnd < v ? pouringEnd * displacement : 0;
    // passages: derivatives of the flows by their own pressures, areas and gas
    const isShut = ventShut[i] === 1;
    const isFull = full[i] === 1;
    const ventArea = isShut ? q[Q.ventShutArea]! : q[Q.ventOpenArea]!;
    const ventSlot = isShut ? Q.ventShutArea : Q.ventOpenArea;
    const pipeSlot = isFull ? Q.fullPipeArea : Q.pipeArea;
    const mixture = M_AIR + yNext * (M_VAPOUR - M_AIR);
    const kTank = Math.sqrt(2 / (R * tNext * mixture));
    const dl = pa - pEnd;
    const al = dl < 0 ? -dl : dl;
    const leakUnit = ((dl > 0 ? kAir : kTank) * Math.sqrt(0.5 * (pa + pEnd))) / Math.sqrt(al + LAMINAR_PA);
    const leakSlope = (q[Q.leakArea]! * leakUnit * (0.5 * al + LAMINAR_PA)) / (al + LAMINAR_PA);
    const leakMean = (0.5 * leak) / (pa + pEnd);
    const leakByP = -leakSlope + leakMean;
    const leakByPa = leakSlope + leakMean;
    const dq = pEnd - pcEnd;
    const aq = dq < 0 ? -dq : dq;
    const pipeArea = isFull ? q[Q.fullPipeArea]! : q[Q.pipeArea]!;
    const pipeUnit = ((dq > 0 ? kTank : kAir) * Math.sqrt(0.5 * (pcEnd + pEnd))) / Math.sqrt(aq + LAMINAR_PA);
    const pipeSlope = (pipeArea * pipeUnit * (0.5 * aq + LAMINAR_PA)) / (aq + LAMINAR_PA);
    const pipeMean = (0.5 * pipe) / (pcEnd + pEnd);
    const pipeByP = pipeSlope + pipeMean;
    const pipeByPc = -pipeSlope + pipeMean;
    const dvn = pa - pcEnd;
    const av = dvn < 0 ? -dvn : dvn;
    const ventLaminar = isShut ? LAMINAR_PA : q[Q.ventLaminar]!;
    const ventUnit = (kAir * Math.sqrt(0.5 * (pa + pcEnd))) / Math.sqrt(av + ventLaminar);
    const ventSlope = (ventArea * ventUnit * (0.5 * av + ventLaminar)) / (av + ventLaminar);
    const ventByLaminar = isShut ? 0 : (-0.5 * vent) / (av + ventLaminar);
    const ventMean = (0.5 * vent) / (pa + pcEnd);
    const ventByPc = -ventSlope + ventMean;
    const ventByPa = ventSlope + ventMean;
    const pm = manifoldAbsPa[i]!;
    const ratio = pm / pcEnd;
    let purgeByPc: number;
    if (ratio <= CRITICAL) purgeByPc = purgeFlow / pcEnd;
    else if (ratio < NEARLY_EQUAL) {
      const l = Math.log(ratio);
      const a = Math.exp((10 / 7) * l);
      const c = a * Math.exp((2 / 7) * l);
      const psi2 = 7 * (a - c);
      // flow = purge k pc psi: its slope is flow (psi - r psi') / (psi pc)
      purgeByPc = (purgeFlow / pcEnd) * (1 - (3.5 * ((10 / 7) * a - (12 / 7) * c)) / psi2);
    } else {
      const dm = pcEnd - pm;
      const am = dm < 0 ? -dm : dm;
      const slope = (purge * kAir * Math.sqrt(0.5 * (pcEnd + pm)) * (0.5 * am + LAMINAR_PA)) / (am + LAMINAR_PA) ** 1.5;
      purgeByPc = slope + (0.5 * purgeFlow) / (pcEnd + pm);
    }
    const purgeUnit = purge > 0 ? purgeFlow / purge : 0;
    const dutyFlow = duty[i]! > 0 ? purge - q[Q.seepArea]! : 0;
    const driftAt = duty[i]! > 0 ? driftPosition[i]! : -1;
    const drift = driftAt >= DRIFT_SLOTS - 1 ? DRIFT_SLOTS - 2 : driftAt | 0;
    const opens = pEnd < pa - q[Q.reliefVacuum]! ? -1 : pEnd > pa + q[Q.reliefPressure]! ? 1 : 0;
    const kE = kA / (R * tNext);
    const vrt = vEnd / (R * tNext);
    const settle = h / (slowTime + h);
    const slow = (slowVolume / rta) * settle;
    const sum1 = leak + relief + evap - pipe;
    const sum2 = pipe + vent - purgeFlow;
    const j11 = h * (leakByP - (opens !== 0 ? reliefSlope : 0) - kE * yNext - pipeByP) - vrt;
    const j12 = -h * pipeByPc;
    const j21 = h * pipeByP;
    const j22 = -vca + h * (pipeByPc + ventByPc - purgeByPc) - slow;
    const det = j11 * j22 - j12 * j21;
    // heat
    const airIn = (leak > 0 ? leak : 0) + (relief > 0 ? relief : 0) + (pipe < 0 ? -pipe : 0);
    const gasOut = (leak < 0 ? -leak : 0) + (relief < 0 ? -relief : 0) + (pipe > 0 ? pipe : 0);
    const cv = CV_AIR + yEnd * (CV_VAPOUR - CV_AIR);
    const heatCapacity = nEnd * cv;
    const airHeat = CV_AIR * (ta - tNext) + R * ta;
    const vapourHeat = CV_VAPOUR * (wall - tNext) + R * wall;
    const carried = airIn * airHeat + evap * vapourHeat - gasOut * R * tNext + pEnd * liquid;
    const tStart = forward * t - back * tB;
    const pSlowStart = forward * pSlow - back * pSlowB;
    const pcStart = forward * pc - back * pcB;
    const readingStart = forward * reading - back * readingB;
    const lagged = h / (lag + h);
    const o = observation[i]!;
    const shown = offset + gain * readingEnd;
    const clipped = shown < lo || shown > hi;
    const pNext = (nEnd * R * tEnd) / vEnd;

    // divided once, not for each derivative
    const perT = 1 / tNext;
    const perRT = perT / R;
    const gasPerT = -0.5 * perT;
    const gasPerY = (-0.5 * (M_VAPOUR - M_AIR)) / mixture;
    const perDet = 1 / det;
    const perN = 1 / nEnd;
    const perTEnd = 1 / tEnd;
    const perV = 1 / vEnd;
    const perHeat = 1 / (heatCapacity + h * hA);
    const perSettle = 1 / ((slowTime + h) * (slowTime + h));
    const perLag = 1 / ((lag + h) * (lag + h));
    const perStepB = r > 0 ? 1 / stepB : 0;
    const perBuild = 1 / ((rise + step) * (rise + step));
    const perRta = 1 / rta;
    const psatWarm = psat * sensitivity;

    for (let j = 0; j < count; j++) {
      const slot = slots[j]!;
      const b = j * ROWS;
      const dStep = slot === shiftSlot ? shiftSign : 0;
      // a ratio of 0 is a step that starts anew, whatever went before
      const dr = (dStep - r * d[b + D_HB]!) * perStepB;
      const dh = dStep * growth + step * dGrowth * dr;
      d[b + D_HB]! = dStep;
      if (slot === Q.ambientRate) d[b + D_PA]! += step;
      d[b + D_PA]! += ambientRate * dStep;
      let dWarmNow = warmRate * dStep;
      if (slot === Q.warm0 + wk) dWarmNow += (1 - share) * step;
      else if (slot === Q.warm0 + wk + 1 && share > 0) dWarmNow += share * step;
      d[b + D_WARM]! += dWarmNow;
      d[b + D_WALL]! += dWarmNow;
      const dPsat = (slot === Q.vapourPressure ? psat / psat0 : 0) + psatWarm * d[b + D_WARM]!;
      let dLiquid = 0;
      if (filling) {
        const dBuild = (dStep * rise - (slot === Q.nozzleRise ? step : 0)) * perBuild;
        d[b + D_POUR]! = d[b + D_POUR]! * (1 - build) + (poured - pouring) * dBuild;
        if (liquid > 0) {
          dLiquid = d[b + D_POUR]! * displacement + (slot === Q.displacement ? pouringEnd : 0);
          d[b + D_V]! -= dLiquid * step + liquid * dStep;
        }
      } else d[b + D_POUR]! = 0;

      const dVap = y * d[b + D_N]! + n * d[b + D_Y]!;
      const dnStart = forward * d[b + D_N]! - back * d[b + D_NB]! + dHistory * (n - nB) * dr;
      const dVapStart = forward * dVap - back * d[b + D_VAPB]! + dHistory * (vap - vapB) * dr;
      const dtStart = forward * d[b + D_T]! - back * d[b + D_TB]! + dHistory * (t - tB) * dr;
      const dpcStart = forward * d[b + D_PC]! - back * d[b + D_PCB]! + dHistory * (pc - pcB) * dr;
      const dSlowStart = forward * d[b + D_SLOW]! - back * d[b + D_SLOWB]! + dHistory * (pSlow - pSlowB) * dr;
      const dReadingStart =
        forward * d[b + D_READING]! - back * d[b + D_READINGB]! + dHistory * (reading - readingB) * dr;
      const dyNext = yNext > 0 ? d[b + D_Y]! + r * (d[b + D_Y]! - d[b + D_YB]!) + (y - yB) * dr : 0;
      const dtNext = d[b + D_T]! + (tNext === t ? 0 : r * (d[b + D_T]! - d[b + D_TB]!) + (t - tB) * dr);
      d[b + D_NB]! = d[b + D_N]!;
      d[b + D_VAPB]! = dVap;
      d[b + D_YB]! = d[b + D_Y]!;
      d[b + D_TB]! = d[b + D_T]!;
      d[b + D_PCB]! = d[b + D_PC]!;
      d[b + D_SLOWB]! = d[b + D_SLOW]!;
      d[b + D_READINGB]! = d[b + D_READING]!;

      // flows by everything but the pressures that the step solves for
      const gas = gasPerT * dtNext + gasPerY * dyNext;
      const leakOwn = leakByPa * d[b + D_PA]! + (dl > 0 ? 0 : leak * gas) + (slot === Q.leakArea ? leakUnit * dl : 0);
      let reliefOwn = 0;
      if (opens < 0) reliefOwn = reliefSlope * (d[b + D_PA]! - (slot === Q.reliefVacuum ? 1 : 0));
      else if (opens > 0) reliefOwn = reliefSlope * (d[b + D_PA]! + (slot === Q.reliefPressure ? 1 : 0));
      if (slot === Q.reliefSlope) reliefOwn += relief / reliefSlope;
      const dkE = (slot === Q.evaporation ? perRT : 0) - kE * perT * dtNext;
      const evapOwn = dkE * (psat - yNext * pEnd) + kE * (dPsat - pEnd * dyNext);
      const pipeOwn = (dq > 0 ? pipe * gas : 0) + (slot === pipeSlot ? pipeUnit * dq : 0);
      const ventOwn =
        ventByPa * d[b + D_PA]! + (slot === ventSlot ? ventUnit * dvn : slot === Q.ventLaminar ? ventByLaminar : 0);
      let dPurgeArea = slot === Q.seepArea ? 1 : 0;
      if (dutyFlow > 0) {
        if (slot === Q.purgeArea) dPurgeArea += dutyFlow / purgeArea;
        else if (driftAt >= 0) {
          if (slot === Q.drift0 + drift) dPurgeArea += dutyFlow * (1 - (driftAt - drift));
          else if (slot === Q.drift0 + drift + 1) dPurgeArea += dutyFlow * (driftAt - drift);
        }
      }
      const dvrt = d[b + D_V]! * perRT - vrt * perT * dtNext;
      const dSettle = (dh * slowTime - (slot === Q.slowTime ? h : 0)) * perSettle;
      const dSlowUptake = (slot === Q.slowVolume ? settle * perRta : 0) + slowVolume * perRta * dSettle;
      const f1 = dnStart + dh * sum1 + h * (leakOwn + reliefOwn + evapOwn - pipeOwn) - pEnd * dvrt;
      const f2 =
        (slot === Q.canisterVolume ? (pcStart - pcEnd) * perRta : 0) +
        vca * dpcStart +
        dh * sum2 +
        h * (pipeOwn + ventOwn - purgeUnit * dPurgeArea) -
        dSlowUptake * (pcEnd - pSlowStart) +
        slow * dSlowStart;
      const dpEnd = (f2 * j12 - f1 * j22) * perDet;
      const dpcEnd = (j21 * f1 - j11 * f2) * perDet;
      d[b + D_PC]! = dpcEnd;
      d[b + D_SLOW]! = dSlowStart + (dpcEnd - dSlowStart) * settle + (pcEnd - pSlowStart) * dSettle;

      const dLeak = leakByP * dpEnd + leakOwn;
      const dRelief = reliefOwn - (opens !== 0 ? reliefSlope * dpEnd : 0);
      const dEvap = evapOwn - kE * yNext * dpEnd;
      const dPipe = pipeByP * dpEnd + pipeByPc * dpcEnd + pipeOwn;
      const dAir = (leak > 0 ? dLeak : 0) + (relief > 0 ? dRelief : 0) - (pipe < 0 ? dPipe : 0);
      const dOut = (pipe > 0 ? dPipe : 0) - (leak < 0 ? dLeak : 0) - (relief < 0 ? dRelief : 0);
      const dVapour = dVapStart + dh * (evap - gasOut * yNext) + h * (dEvap - dOut * yNext - gasOut * dyNext);
      d[b + D_N]! = dpEnd * vrt + pEnd * dvrt;
      d[b + D_Y]! = yEnd > 0 ? (dVapour - yEnd * d[b + D_N]!) * perN : 0;
      const dCapacity = d[b + D_N]! * cv + nEnd * (CV_VAPOUR - CV_AIR) * d[b + D_Y]!;
      const dCarried =
        dAir * airHeat -
        airIn * CV_AIR * dtNext +
        dEvap * vapourHeat +
        evap * ((CV_VAPOUR + R) * d[b + D_WALL]! - CV_VAPOUR * dtNext) -
        R * (dOut * tNext + gasOut * dtNext) +
        dpEnd * liquid +
        pEnd * dLiquid;
      const dWallHeat = slot === Q.wallHeat ? 1 : 0;
      const numerator =
        dtStart * heatCapacity +
        tStart * dCapacity +
        dh * (carried + hA * wall) +
        h * (dCarried + dWallHeat * wall + hA * d[b + D_WALL]!);
      const denominator = dCapacity + dh * hA + h * dWallHeat;
      d[b + D_T]! = (numerator - tEnd * denominator) * perHeat;
      const dLagged = (dh * lag - (slot === Q.lag ? h : 0)) * perLag;
      d[b + D_READING]! =
        dReadingStart + (dpEnd - d[b + D_PA]! - dReadingStart) * lagged + (pEnd - pa - readingStart) * dLagged;
      d[b + D_P]! = pNext * (d[b + D_N]! * perN + d[b + D_T]! * perTEnd - d[b + D_V]! * perV);
      if (o >= 0) {
        out[at[j]! + o] = clipped
          ? 0
          : gain * d[b + D_READING]! + (slot === Q.offset ? 1 : slot === Q.gain ? readingEnd : 0);
      }
    }

    nB = n;
    yB = y;
    tB = t;
    pcB = pc;
    pSlowB = pSlow;
    readingB = reading;
    stepB = step;
    n = nEnd;
    y = yEnd;
    t = tEnd;
    p = pNext;
    pc = pcEnd;
    pSlow = slowEnd;
    reading = readingEnd;
    v = vEnd;
    pouring = filling ? pouringEnd : 0;
  }
}
