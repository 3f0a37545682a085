/** Constants of the two-space model's equations; see `two-space.ts`. */

/** Molar gas constant [J/(mol K)], SI definition 2019. */
export const R = 8.314462618;
/** Molar mass of dry air and of petrol vapour [kg/mol]; air: US Standard Atmosphere 1976, vapour: AP-42 7.1, RVP 10. */
export const M_AIR = 0.0289647;
export const M_VAPOUR = 0.066;
/** Molar heats at constant volume [J/(mol K)]: diatomic gas 5/2 R; butane-pentane vapour, handbooks, judgement. */
export const CV_AIR = 20.8;
export const CV_VAPOUR = 85;
/** Pressure difference below which an orifice turns laminar in this model [Pa], judgement (numerical smoothing). */
export const LAMINAR_PA = 2;
/** Numerical floors and limits of the step, far outside the range of use. */
export const SMALLEST_VOLUME = 5e-4;
export const LOWEST_PRESSURE = 1000;
export const CONVERGED_PA = 1e-4;
/** Newton steps at most, and how many of them are whole. */
export const MOST_NEWTON_STEPS = 40;
export const UNDAMPED = 6;
/** Duty change that restarts the integration [-], and the largest growth of a step that does not. */
export const DUTY_JUMP = 0.03;
export const MOST_GROWTH = 2.2;
export const GAMMA = 1.4;
export const CRITICAL = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1));
export const CHOKED = Math.sqrt(GAMMA) * (2 / (GAMMA + 1)) ** ((GAMMA + 1) / (2 * (GAMMA - 1)));

/** Above this pressure ratio the purge passage follows the orifice law, which also runs backwards. */
export const NEARLY_EQUAL = 0.97;
