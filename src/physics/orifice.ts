/**
 * Flow through a hole: the isentropic law, its smooth signed form for integrators, and the inverses that exist.
 *
 * Every function takes the effective area, the discharge coefficient times the bore area. Written with
 * psi(x), x = 1 - p2/p1, the mass flow is A p1 / sqrt(Rs T1) psi(x); psi is flat once the flow chokes.
 */
import { ORIFICE_LAMINAR_RELATIVE_DROP } from './constants.ts';

/** No gas between gamma 1 and 5/3 chokes above this pressure ratio [-], so the power for the limit can be skipped. */
const NEVER_CHOKED_ABOVE_RATIO = 0.6066;

/**
 * Critical pressure ratio: downstream over upstream absolute pressure at which a hole chokes.
 *
 * Valid: ideal gas, 1 < gamma <= 5/3.
 * Source: isentropic flow, textbook (0.528282 for air).
 * @param gamma ratio of heat capacities [-]
 * @returns critical ratio [-]
 */
export function criticalPressureRatio(gamma: number): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

/**
 * Dimensionless flow of a choked hole, mass flow over A p1 / sqrt(Rs T1).
 *
 * Valid: ideal gas, 1 < gamma <= 5/3.
 * Source: isentropic flow, textbook (0.684731 for air).
 * @param gamma ratio of heat capacities [-]
 * @returns choked flow factor [-]
 */
export function chokedFlowFactor(gamma: number): number {
  return Math.sqrt(gamma) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
}

/**
 * Isentropic flow function psi of the relative drop, without the laminar part.
 *
 * Valid: 0 <= relativeDrop <= 1, ideal gas, 1 < gamma <= 5/3.
 * Source: isentropic flow, textbook.
 * @param relativeDrop one minus downstream over upstream absolute pressure [-]
 * @param gamma ratio of heat capacities [-]
 * @returns dimensionless flow [-]
 */
export function isentropicFlowFactor(relativeDrop: number, gamma: number): number {
  const ratio = 1 - relativeDrop;
  if (ratio <= NEVER_CHOKED_ABOVE_RATIO && ratio <= criticalPressureRatio(gamma)) return chokedFlowFactor(gamma);
  // r^(2/g) - r^((g+1)/g) = q (q - r) with q = r^(1/g): one power instead of two.
  // expm1 and log1p keep q - r accurate when the drop is small.
  const logRatio = Math.log1p(-relativeDrop);
  const q = Math.exp(logRatio / gamma);
  const qMinusRatio = relativeDrop + Math.expm1(logRatio / gamma);
  return Math.sqrt(((2 * gamma) / (gamma - 1)) * q * qMinusRatio);
}

/** Slope of psi with the relative drop [-]; zero when choked, unbounded at zero drop. `factor` is psi there. */
function isentropicFlowSlope(relativeDrop: number, gamma: number, factor: number): number {
  const ratio = 1 - relativeDrop;
  if (ratio <= NEVER_CHOKED_ABOVE_RATIO && ratio <= criticalPressureRatio(gamma)) return 0;
  // psi^2 = K q (q - r) with K = 2g/(g-1) and q = r^(1/g): q follows from psi without a power.
  const halfK = gamma / (gamma - 1);
  const q = 0.5 * (ratio + Math.sqrt(ratio * ratio + (2 * factor * factor) / halfK));
  return (halfK * q * ((gamma + 1) / gamma - ((2 / gamma) * q) / ratio)) / factor;
}

/**
 * Mass flow of an ideal gas through a hole, subcritical or choked; exact isentropic law, one direction.
 *
 * Valid: upstream at or above downstream pressure (returns 0 otherwise), thin hole, ideal gas, 1 < gamma <= 5/3.
 * Source: isentropic flow, textbook; orifice table of the published check values.
 * @param effectiveAreaM2 discharge coefficient times bore area [m2]
 * @param upstreamAbsPa absolute pressure upstream [Pa]
 * @param downstreamAbsPa absolute pressure downstream [Pa]
 * @param upstreamTemperatureK gas temperature upstream [K]
 * @param specificGasConstant of the upstream gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns mass flow [kg/s]
 */
export function orificeMassFlow(
  effectiveAreaM2: number,
  upstreamAbsPa: number,
  downstreamAbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
): number {
  if (downstreamAbsPa >= upstreamAbsPa) return 0;
  const drop = (upstreamAbsPa - downstreamAbsPa) / upstreamAbsPa;
  return (
    ((effectiveAreaM2 * upstreamAbsPa) / Math.sqrt(specificGasConstant * upstreamTemperatureK)) *
    isentropicFlowFactor(drop, gamma)
  );
}

/**
 * Signed mass flow from side 1 to side 2, smooth through zero: the exact isentropic law beyond a small relative
 * drop (ORIFICE_LAMINAR_RELATIVE_DROP, 5 Pa at one atmosphere), an odd cubic below it that joins in value and slope.
 *
 * Valid: as orificeMassFlow; below the transition the flow is a numerical and physical approximation to laminar flow.
 * Source: isentropic flow, textbook; the laminar part is judgement.
 * @param effectiveAreaM2 discharge coefficient times bore area [m2]
 * @param pressure1AbsPa absolute pressure on side 1 [Pa]
 * @param pressure2AbsPa absolute pressure on side 2 [Pa]
 * @param upstreamTemperatureK gas temperature on the side of higher pressure [K]
 * @param specificGasConstant of the gas on the side of higher pressure [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns mass flow, positive from 1 to 2 [kg/s]
 */
export function smoothOrificeMassFlow(
  effectiveAreaM2: number,
  pressure1AbsPa: number,
  pressure2AbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
): number {
  const forward = pressure1AbsPa >= pressure2AbsPa;
  const upstream = forward ? pressure1AbsPa : pressure2AbsPa;
  const drop = (forward ? pressure1AbsPa - pressure2AbsPa : pressure2AbsPa - pressure1AbsPa) / upstream;
  let factor: number;
  if (drop >= ORIFICE_LAMINAR_RELATIVE_DROP) {
    factor = isentropicFlowFactor(drop, gamma);
  } else {
    const joinFactor = isentropicFlowFactor(ORIFICE_LAMINAR_RELATIVE_DROP, gamma);
    const joinSlope =
      (isentropicFlowSlope(ORIFICE_LAMINAR_RELATIVE_DROP, gamma, joinFactor) * ORIFICE_LAMINAR_RELATIVE_DROP) /
      joinFactor;
    const u = drop / ORIFICE_LAMINAR_RELATIVE_DROP;
    factor = joinFactor * u * (0.5 * (3 - joinSlope) + 0.5 * (joinSlope - 1) * u * u);
  }
  const flow = ((effectiveAreaM2 * upstream) / Math.sqrt(specificGasConstant * upstreamTemperatureK)) * factor;
  return forward ? flow : -flow;
}

/**
 * The flow of smoothOrificeMassFlow with its exact derivatives by both pressures, temperature and gas held.
 *
 * Valid: as smoothOrificeMassFlow.
 * Source: differentiation of the isentropic law.
 * @param effectiveAreaM2 discharge coefficient times bore area [m2]
 * @param pressure1AbsPa absolute pressure on side 1 [Pa]
 * @param pressure2AbsPa absolute pressure on side 2 [Pa]
 * @param upstreamTemperatureK gas temperature on the side of higher pressure [K]
 * @param specificGasConstant of the gas on the side of higher pressure [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @param out receives the derivative by pressure 1 at index 0 and by pressure 2 at index 1 [kg/(s Pa)]
 * @returns mass flow, positive from 1 to 2 [kg/s]
 */
export function smoothOrificeMassFlowDerivatives(
  effectiveAreaM2: number,
  pressure1AbsPa: number,
  pressure2AbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
  out: { [index: number]: number },
): number {
  const forward = pressure1AbsPa >= pressure2AbsPa;
  const upstream = forward ? pressure1AbsPa : pressure2AbsPa;
  const drop = (forward ? pressure1AbsPa - pressure2AbsPa : pressure2AbsPa - pressure1AbsPa) / upstream;
  let factor: number;
  let slope: number;
  if (drop >= ORIFICE_LAMINAR_RELATIVE_DROP) {
    factor = isentropicFlowFactor(drop, gamma);
    slope = isentropicFlowSlope(drop, gamma, factor);
  } else {
    const joinFactor = isentropicFlowFactor(ORIFICE_LAMINAR_RELATIVE_DROP, gamma);
    const joinSlope =
      (isentropicFlowSlope(ORIFICE_LAMINAR_RELATIVE_DROP, gamma, joinFactor) * ORIFICE_LAMINAR_RELATIVE_DROP) /
      joinFactor;
    const u = drop / ORIFICE_LAMINAR_RELATIVE_DROP;
    const linear = 0.5 * (3 - joinSlope);
    const cubic = 0.5 * (joinSlope - 1);
    factor = joinFactor * u * (linear + cubic * u * u);
    slope = (joinFactor * (linear + 3 * cubic * u * u)) / ORIFICE_LAMINAR_RELATIVE_DROP;
  }
  const scale = effectiveAreaM2 / Math.sqrt(specificGasConstant * upstreamTemperatureK);
  const byUpstream = scale * (factor + (1 - drop) * slope);
  const byDownstream = -scale * slope;
  const flow = scale * upstream * factor;
  if (forward) {
    out[0] = byUpstream;
    out[1] = byDownstream;
    return flow;
  }
  out[0] = -byDownstream;
  out[1] = -byUpstream;
  return -flow;
}

/**
 * Effective area that passes a given mass flow: the inverse of orificeMassFlow, always unique.
 *
 * Valid: upstream above downstream pressure; undefined (returned as undefined) when there is no pressure difference.
 * Source: inversion of the isentropic law.
 * @param massFlowKgPerS mass flow [kg/s]
 * @param upstreamAbsPa absolute pressure upstream [Pa]
 * @param downstreamAbsPa absolute pressure downstream [Pa]
 * @param upstreamTemperatureK gas temperature upstream [K]
 * @param specificGasConstant of the upstream gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns effective area [m2]
 */
export function orificeAreaFromMassFlow(
  massFlowKgPerS: number,
  upstreamAbsPa: number,
  downstreamAbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
): number | undefined {
  const flowOfUnitArea = orificeMassFlow(
    1,
    upstreamAbsPa,
    downstreamAbsPa,
    upstreamTemperatureK,
    specificGasConstant,
    gamma,
  );
  return flowOfUnitArea > 0 ? massFlowKgPerS / flowOfUnitArea : undefined;
}

/** What pressure drop a mass flow asks for: one drop, any drop beyond choking, or none. */
export type PressureDropResult =
  | { readonly kind: 'unique'; readonly pressureDropPa: number }
  | {
      readonly kind: 'not unique';
      readonly reason: string;
      readonly maximumMassFlowKgPerS: number;
      readonly smallestPressureDropPa: number;
    }
  | { readonly kind: 'impossible'; readonly reason: string; readonly maximumMassFlowKgPerS: number };

/**
 * Pressure drop at which a hole passes a given mass flow; typed, because a choked hole passes its one flow at any drop.
 *
 * Valid: 0 <= mass flow; unique below the choked flow, not unique at it, impossible above it.
 * Source: inversion of the isentropic law by bisection and Newton's method.
 * @param massFlowKgPerS mass flow [kg/s]
 * @param effectiveAreaM2 discharge coefficient times bore area [m2]
 * @param upstreamAbsPa absolute pressure upstream [Pa]
 * @param upstreamTemperatureK gas temperature upstream [K]
 * @param specificGasConstant of the upstream gas [J/(kg K)]
 * @param gamma ratio of heat capacities [-]
 * @returns the drop [Pa], or why there is not one, with the maximum flow [kg/s]
 */
export function orificePressureDropFromMassFlow(
  massFlowKgPerS: number,
  effectiveAreaM2: number,
  upstreamAbsPa: number,
  upstreamTemperatureK: number,
  specificGasConstant: number,
  gamma: number,
): PressureDropResult {
  const scale = (effectiveAreaM2 * upstreamAbsPa) / Math.sqrt(specificGasConstant * upstreamTemperatureK);
  const maximum = scale * chokedFlowFactor(gamma);
  const critical = 1 - criticalPressureRatio(gamma);
  // Two flows that differ by rounding only are the same flow.
  const sameFlow = 4 * Number.EPSILON * maximum;
  if (massFlowKgPerS > maximum + sameFlow) {
    const reason = `the hole passes at most ${maximum} kg/s from this upstream state; ${massFlowKgPerS} kg/s was asked`;
    return { kind: 'impossible', reason, maximumMassFlowKgPerS: maximum };
  }
  if (massFlowKgPerS >= maximum - sameFlow) {
    const reason = `choked: the hole passes its maximum of ${maximum} kg/s at every drop from ${critical * upstreamAbsPa} Pa on`;
    const smallestPressureDropPa = critical * upstreamAbsPa;
    return { kind: 'not unique', reason, maximumMassFlowKgPerS: maximum, smallestPressureDropPa };
  }
  const target = massFlowKgPerS / scale;
  if (target <= 0) return { kind: 'unique', pressureDropPa: 0 };
  let low = 0;
  let high = critical;
  let drop = Math.min(0.5 * target * target, critical);
  for (let iteration = 0; iteration < 200; iteration++) {
    const factor = isentropicFlowFactor(drop, gamma);
    if (factor > target) high = drop;
    else low = drop;
    const slope = isentropicFlowSlope(drop, gamma, factor);
    const newton = slope > 0 ? drop - (factor - target) / slope : Number.NaN;
    const next = newton > low && newton < high ? newton : 0.5 * (low + high);
    if (Math.abs(next - drop) <= 1e-15 * critical + 4 * Number.EPSILON * drop) {
      drop = next;
      break;
    }
    drop = next;
  }
  return { kind: 'unique', pressureDropPa: drop * upstreamAbsPa };
}
