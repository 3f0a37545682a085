/** The orifice of the models of single runs: n' = a sqrt(2 p_mean / (R T M)) dp / sqrt(|dp| + the laminar difference). */
import * as constants from '../model/two-space-constants.ts';

// taken out once, as in the models that call this
const { LAMINAR_PA } = constants;

export const FLOW = 0;
export const SLOPE = 1;
/** What `orifice` answers: an array, since a number kept outside a function is allocated anew at each write. */
export const through = new Float64Array(2);

/**
 * Flow of an orifice [mol/s] and its slope by the pressure difference [mol/(s Pa)], in `through`.
 *
 * @param kArea effective area times sqrt(2 / (R T M)) [mol/(s Pa)]
 * @param difference pressure difference [Pa]
 * @param meanAbsPa mean of the absolute pressures on both sides [Pa]
 */
export function orifice(kArea: number, difference: number, meanAbsPa: number): void {
  const a = difference < 0 ? -difference : difference;
  const k = (kArea * Math.sqrt(meanAbsPa)) / Math.sqrt(a + LAMINAR_PA);
  through[FLOW] = k * difference;
  through[SLOPE] = (k * (0.5 * a + LAMINAR_PA)) / (a + LAMINAR_PA);
}

/**
 * The same through an orifice with a bed before it: |dp| = b n' + n'^2 / (k^2 p_mean).
 *
 * @param bed resistance of the bed [Pa s/mol], above zero
 */
export function orificeBehindBed(kArea: number, bed: number, difference: number, meanAbsPa: number): void {
  const a = 1 / (kArea * kArea * meanAbsPa);
  const size = difference < 0 ? -difference : difference;
  const root = Math.sqrt(bed * bed + 4 * a * size);
  const flow = (2 * size) / (bed + root);
  through[FLOW] = difference < 0 ? -flow : flow;
  through[SLOPE] = 1 / root;
}
