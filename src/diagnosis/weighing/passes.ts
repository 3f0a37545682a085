/** How far the fits go, pass by pass. */
export const FIRST_PASS = { mostIterations: 8, enough: 1 };
export const SECOND_PASS = { mostIterations: 12, enough: 0.05 };
/** Estimates of the noise from the residuals of the best fit, each followed by a fit under it, at most. */
export const MOST_NOISE_PASSES = 6;
/** The integral over the size where a Gaussian would not do. */
export const COARSE_MARGINAL = { spacing: 0.9, widest: 0.6, depth: 4, iterations: 3, reach: 3.5 };
/** A parameter better determined than this [z] is Gaussian enough. */
export const WELL_DETERMINED = 0.12;
