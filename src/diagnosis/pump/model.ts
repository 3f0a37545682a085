/**
 * The reduced model of a pump run: one pressure in tank and canister, a pump, a reference orifice.
 *
 * At 1 L/min the drop over lines and canister is some pascals, so tank and canister share the pressure p. The tank has
 * moles n, vapour fraction y and temperature T of its own; F flows from it through vapour line and canister head (one
 * mixed cell each, vapour fraction y_h at the end) to the carbon, which keeps all but the share `past` of the vapour:
 *   n' = leak + evaporation - F,   (V_c / R T_a) p' = F + purge - (1 - past) y_h (F + purge) + vent - N (1 - slip)
 * Pump: N = Q0 (1 - x)(1 + bend x) p_inlet / (R T_a), x = pressure difference over stall pressure. At rest it draws
 * through the orifice, whose pressure follows at once from equal flows (the module holds 20 mL); turned, on p itself.
 * Time: backward differences of second order with variable steps, of first order after each command: an implicit Euler
 * step of length h (1 + w) / (1 + 2 w) from a weighted mean of the last two states, w the ratio of the steps.
 * Where the way between tank and canister is nearly shut (`pathArea`), the tank has a pressure of its own and F is the flow
 * through what is left. An over-pressure module is the mirror image. Orifices as in `two-space.ts`.
 */
import * as constants from '../model/two-space-constants.ts';
import * as passage from '../single-run/orifice.ts';
import type { PumpDrive } from './drive.ts';
import { P } from './quantities.ts';

// taken out once: loaders that keep live bindings make each look-up of an import a call, too dear in the loops below
const { CONVERGED_PA, CV_AIR, CV_VAPOUR, LOWEST_PRESSURE, M_AIR, M_VAPOUR, R } = constants;
const { FLOW, orifice, SLOPE, through } = passage;

/** Share of the gas between tank and carbon that is in the line, judgement: 2 m of 10 mm bore against ports and purge line. */
const LINE_SHARE = 0.3;
const MOST_NEWTON_STEPS = 15;

/**
 * Runs the model through a recording's commands.
 *
 * @param q quantities by slot of `P` [SI units as listed there]
 * @param d the recording's steps
 * @param out readings of the module's and the tank's sensor at their observations [Pa gauge], as far as recorded
 */
export function runPump(q: Float64Array, d: PumpDrive, out: readonly Float64Array[]): void {
  const pa = d.ambientAbsPa;
  const ta = d.ambientTemperatureK;
  const rta = R * ta;
  const kAir = Math.sqrt(2 / (rta * M_AIR));
  const v = q[P.tankVolume]!;
  const vca = q[P.canisterVolume]! / rta;
  const stuck = q[P.stuck]! > 0.5;
  const free = Math.max(0, q[P.freeFlow]! * q[P.strength]!);
  const stall = Math.max(1, q[P.stall]! * q[P.strength]!);
  const bend = q[P.bend]!;
  const psat0 = q[P.vapourPressure]!;
  const uptake = 1 - Math.min(1, q[P.past]!);
  const lineMoles = (LINE_SHARE * q[P.headVolume]! * pa) / rta;
  const headMoles = ((1 - LINE_SHARE) * q[P.headVolume]! * pa) / rta;
  const slip = Math.min(0.5, Math.max(0, q[P.slip]!));
  const kA = q[P.evaporation]!;
  const hA = q[P.wallHeat]!;
  const dir = d.direction;
  let wall = d.tankTemperatureK;
  let t = wall;
  let p = pa;
  let pm = p;
  let n = (p * v) / (R * t);
  let y = Math.min(0.95, Math.max(0, (psat0 - q[P.deficit]!) / p));
  let yHead = y / (1 + Math.exp(-q[P.headVapour]!));
  let yLine = yHead;
  let warmed = 0;
  let psat = psat0;
  const path = q[P.pathArea]!;
  const frozen = q[P.frozen]! > 0.5;
  const tankFrozen = q[P.tankFrozen]! > 0.5;
  let pTank = p;
  const ventVapour = Math.min(0.9, Math.max(0, q[P.ventVapour]!));
  let yVent = ventVapour;
  let readModule = p - pa;
  let readTank = p - pa;
  const channels = d.steps.observation;

  let nBefore = n;
  let pBefore = p;
  let vapourBefore = n * y;
  let tBefore = t;
  let flowBefore = 0;
  let lineBefore = yLine;
  let headBefore = yHead;

  for (let i = 0; i < d.steps.count; i++) {
    const dt = d.steps.dtS[i]!;
    const ratio = d.steps.ratio[i]!;
    // backward differences of second order as an Euler step from between the last two states
    const h = (dt * (1 + ratio)) / (1 + 2 * ratio);
    const now = ((1 + ratio) * (1 + ratio)) / (1 + 2 * ratio);
    const before = now - 1;
    const n0 = now * n - before * nBefore;
    const pStart = now * p - before * pBefore;
    const vapour0 = now * n * y - before * vapourBefore;
    const t0 = now * t - before * tBefore;
    const line0 = now * yLine - before * lineBefore;
    const head0 = now * yHead - before * headBefore;
    nBefore = n;
    pBefore = p;
    vapourBefore = n * y;
    tBefore = t;
    lineBefore = yLine;
    headBefore = yHead;
    if (q[P.warm]! !== 0) {
      warmed += q[P.warm]! * dt;
      wall = d.tankTemperatureK + warmed;
      psat = psat0 * Math.exp(d.vapourSensitivityPerK * warmed);
    }
    const turned = d.toTank[i] === 1 && !stuck;
    const kVent = kAir * (turned ? q[P.ventEndArea]! : q[P.ventOpenArea]!);
    const kPurge = kAir * (q[P.purgeEndArea]! + d.duty[i]! * q[P.purgeArea]!);
    // a bed that holds no more gives vapour to its vent end, and heavier gas needs more pressure through the orifice
    if (turned) yVent = ventVapour;
    else if (d.pumpOn[i] === 1) yVent *= q[P.clearing]! / (q[P.clearing]! + dt);
    const kOrifice = kAir * q[P.orificeArea]! * Math.sqrt(M_AIR / (M_AIR + yVent * (M_VAPOUR - M_AIR)));
    const flowNow = d.pumpOn[i] === 1 ? free * Math.exp(q[P.drift]! * d.progress[i]!) : 0;
    const kTank = Math.sqrt(2 / (R * t * (M_AIR + y * (M_VAPOUR - M_AIR))));
    const capacity = n * (CV_AIR + y * (CV_VAPOUR - CV_AIR));
    // flow out of the tank as of the last step, until the iteration has its own
    let f = flowBefore;
    let vrt = 0;
    let tEnd = t;
    let outMix = 0;
    const kE = kA / (R * t);
    let leak = 0;
    let evap = 0;
    let out_ = 0;
    let purge = 0;
    for (let it = 0; it < MOST_NEWTON_STEPS; it++) {
      let dOut: number;
      if (path > 0) {
        // parted by what is left of the way: the tank's pressure from its own balance, given the canister's
        for (let k = 0; ; k++) {
          orifice(path * (pTank > p ? kTank : kAir), pTank - p, 0.5 * (pTank + p));
          f = through[FLOW]!;
          const dF = through[SLOPE]!;
          orifice(q[P.leakArea]! * (pTank > pa ? kTank : kAir), pa - pTank, 0.5 * (pa + pTank));
          leak = through[FLOW]!;
          evap = kE * (psat - y * pTank);
          const inAir = (leak > 0 ? leak : 0) + (f < 0 ? -f : 0);
          outMix = (leak < 0 ? -leak : 0) + (f > 0 ? f : 0);
          const heat =
            inAir * (CV_AIR * (ta - t) + R * ta) + evap * (CV_VAPOUR * (wall - t) + R * wall) - outMix * R * t;
          tEnd = t0 + (h * (heat + hA * (wall - t0))) / (capacity + h * hA);
          vrt = v / (R * tEnd);
          const slope = h * (-through[SLOPE]! - kE * y - dF) - vrt;
          let step = (n0 + h * (leak + evap - f) - pTank * vrt) / slope;
          if (step > 3000) step = 3000;
          else if (step < -3000) step = -3000;
          pTank = Math.max(LOWEST_PRESSURE, pTank - step);
          out_ = h * f;
          dOut = h * dF * ((-h * dF) / slope - 1);
          if ((step < CONVERGED_PA && step > -CONVERGED_PA) || k === MOST_NEWTON_STEPS) break;
        }
      } else {
        orifice(q[P.leakArea]! * (p > pa ? kTank : kAir), pa - p, 0.5 * (pa + p));
        leak = through[FLOW]!;
        const dLeak = -through[SLOPE]!;
        evap = kE * (psat - y * p);
        // temperature after the flows so far, and how it falls with what leaves the tank beyond them: gas that expands cools
        const inAir = (leak > 0 ? leak : 0) + (f < 0 ? -f : 0);
        outMix = (leak < 0 ? -leak : 0) + (f > 0 ? f : 0);
        const heat = inAir * (CV_AIR * (ta - t) + R * ta) + evap * (CV_VAPOUR * (wall - t) + R * wall) - outMix * R * t;
        tEnd = t0 + (h * (heat + hA * (wall - t0))) / (capacity + h * hA);
        const cooling = (f < 0 ? CV_AIR * (ta - t) + R * ta : R * t) / (capacity + h * hA);
        vrt = v / (R * tEnd);
        // hF: what leaves the tank towards the canister in this step [mol], in step with the temperature it leaves behind
        const less = 1 + (p * vrt * cooling) / tEnd;
        out_ = h * f + (n0 + h * (leak + evap) - p * vrt - h * f) / less;
        dOut = (h * (dLeak - kE * y) - vrt) / less;
        tEnd -= cooling * (out_ - h * f);
        vrt = v / (R * tEnd);
        f = out_ / h;
      }
      orifice(kPurge, pa - p, 0.5 * (pa + p));
      purge = through[FLOW]!;
      const dPurge = -through[SLOPE]!;
      // vapour that the carbon keeps of what comes through the head [mol]
      const keeps = out_ + h * purge > 0 ? uptake * yHead : 0;
      orifice(kVent, pa - p, 0.5 * (pa + p));
      let inflow = purge + through[FLOW]!;
      let dInflow = dPurge - through[SLOPE]!;
      if (flowNow > 0) {
        let drawn: number;
        let dDrawn: number;
        if (turned) {
          pm = p;
          const x = (dir * (pa - p)) / stall;
          const inlet = dir > 0 ? p : pa;
          const c = (dir * flowNow) / rta;
          drawn = c * inlet * (1 - x) * (1 + bend * x);
          const byX = c * inlet * (bend * (1 - x) - (1 + bend * x));
          dDrawn = (byX * -dir) / stall + (dir > 0 ? c * (1 - x) * (1 + bend * x) : 0);
          if (dir > 0) {
            drawn *= 1 - slip;
            dDrawn *= 1 - slip;
          }
        } else {
          // module pressure from equal flows of pump and orifice
          let byM = 1;
          let dPump = 0;
          for (let k = 0; k < MOST_NEWTON_STEPS; k++) {
            const x = (dir * (pa - pm)) / stall;
            const inlet = dir > 0 ? pm : pa;
            const c = (dir * flowNow) / rta;
            const pump = c * inlet * (1 - x) * (1 + bend * x);
            dPump =
              (c * inlet * (bend * (1 - x) - (1 + bend * x)) * -dir) / stall +
              (dir > 0 ? c * (1 - x) * (1 + bend * x) : 0);
            orifice(kOrifice, p - pm, 0.5 * (p + pm));
            byM = -through[SLOPE]! - dPump;
            let step = (through[FLOW]! - pump) / byM;
            if (step > 2000) step = 2000;
            else if (step < -2000) step = -2000;
            pm -= step;
            drawn = pump;
            if (step < CONVERGED_PA && step > -CONVERGED_PA) break;
          }
          drawn = through[FLOW]!;
          // dpm/dp = slope / (slope + dPump); the drawn flow changes with it along the pump's line
          dDrawn = (dPump * through[SLOPE]!) / (through[SLOPE]! + dPump);
        }
        inflow -= drawn;
        dInflow -= dDrawn;
      } else pm = p;
      const g = out_ - keeps * (out_ + h * purge) + h * inflow - vca * (p - pStart);
      const dg = dOut - keeps * (dOut + h * dPurge) + h * dInflow - vca;
      let step = g / dg;
      if (step > 3000) step = 3000;
      else if (step < -3000) step = -3000;
      p -= step;
      if (p < LOWEST_PRESSURE) p = LOWEST_PRESSURE;
      if (step < CONVERGED_PA && step > -CONVERGED_PA) break;
    }
    if (flowNow > 0 && turned) {
      const x = (dir * (pa - p)) / stall;
      pm = p - dir * q[P.bed]! * flowNow * (1 - x) * (1 + bend * x);
    }
    flowBefore = f;
    // line, then head, where a leaking or opened purge end lets air in
    const air = purge > 0 ? h * purge : 0;
    if (f > 0) {
      yLine = (lineMoles * line0 + out_ * y) / (lineMoles + out_);
      yHead = (headMoles * head0 + out_ * yLine) / (headMoles + out_ + air);
    } else {
      yHead = (headMoles * head0) / (headMoles - out_ + air);
      yLine = (lineMoles * line0 - out_ * yHead) / (lineMoles - out_);
    }
    const vapour = vapour0 + h * (evap - outMix * y);
    if (path === 0) pTank = p;
    n = pTank * vrt;
    y = Math.min(0.95, Math.max(0, vapour / n));
    t = tEnd;

    readModule += ((pm - pa - readModule) * dt) / (q[P.lag]! + dt);
    readTank += ((pTank - pa - readTank) * dt) / (q[P.tankLag]! + dt);
    for (let c = 0; c < channels.length; c++) {
      const o = channels[c]![i]!;
      if (o < 0) continue;
      const module = d.seesModule[c]!;
      const shown = module
        ? frozen
          ? q[P.level]!
          : q[P.offset]! + q[P.gain]! * readModule
        : tankFrozen
          ? q[P.tankLevel]!
          : q[P.tankOffset]! + q[P.tankGain]! * readTank;
      const r = d.rails[c]!;
      out[c]![o] = shown < r.low ? r.low : shown > r.high ? r.high : shown;
    }
  }
}
