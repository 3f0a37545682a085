/** Fuel between the lobes of a saddle tank: over the weir by itself, back by a jet pump. */
import { smoothStep, smoothStepDerivative } from './smooth-step.ts';

/** Share of a lobe over which the jet pump loses its suction as the lobe runs dry [-]. Source: judgement. */
export const SUCTION_FADE_FRACTION = 0.01;

/** Share of a lobe over which the flow at the crest of a weir rounds off [-]. Source: judgement, for a smooth law. */
const CREST_FRACTION = 0.005;

/**
 * Fuel that stands above the crest, rounded at the crest so that the law is smooth.
 *
 * Valid: any fill.
 * Source: judgement; softplus-like parabola over CREST_FRACTION on both sides of the crest.
 * @param fillFraction share of the lobe that is full [-]
 * @param crestFraction height of the weir as a share of the lobe [-]
 * @returns share of the lobe above the crest, not negative [-]
 */
export function aboveCrest(fillFraction: number, crestFraction: number): number {
  const above = fillFraction - crestFraction;
  if (above <= -CREST_FRACTION) return 0;
  if (above >= CREST_FRACTION) return above;
  return (above + CREST_FRACTION) ** 2 / (4 * CREST_FRACTION);
}

/**
 * Derivative of aboveCrest by the fill.
 *
 * Valid: any fill.
 * Source: differentiation.
 * @param fillFraction share of the lobe that is full [-]
 * @param crestFraction height of the weir as a share of the lobe [-]
 * @returns derivative, 0 to 1 [-]
 */
export function aboveCrestDerivative(fillFraction: number, crestFraction: number): number {
  const above = fillFraction - crestFraction;
  if (above <= -CREST_FRACTION) return 0;
  if (above >= CREST_FRACTION) return 1;
  return (above + CREST_FRACTION) / (2 * CREST_FRACTION);
}

/**
 * Share of its flow that a jet pump lifts from a lobe that is running dry.
 *
 * Valid: any fill.
 * Source: judgement; suction fades over SUCTION_FADE_FRACTION above what cannot be sucked up.
 * @param fillFraction share of the lobe that is full [-]
 * @param unusableFraction share that stays in the lobe [-]
 * @returns 0 to 1 [-]
 */
export function suctionShare(fillFraction: number, unusableFraction: number): number {
  return smoothStep(fillFraction, unusableFraction, unusableFraction + SUCTION_FADE_FRACTION);
}

/**
 * Derivative of suctionShare by the fill.
 *
 * Valid: any fill.
 * Source: differentiation.
 * @param fillFraction share of the lobe that is full [-]
 * @param unusableFraction share that stays in the lobe [-]
 * @returns derivative [-]
 */
export function suctionShareDerivative(fillFraction: number, unusableFraction: number): number {
  return smoothStepDerivative(fillFraction, unusableFraction, unusableFraction + SUCTION_FADE_FRACTION);
}
