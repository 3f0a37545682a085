/** How well equivalent diameters fit the truth, by the definitions of the practice format. */
import { mean, quantile, rootMeanSquare, share } from './statistics.ts';
import type { Bounds, Truth } from './truth.ts';

/** |ln(d/d_true)| charged for a hole that was given no diameter, and the most for any. */
const MOST_ABS_LN = 3;
/** Holes that are marked [mm]. */
const MARKED_MM = { least: 0.2, most: 5 };

/** A size as a tool or a method gives it; a method without an interval leaves that out. */
export interface Size {
  readonly median: number;
  readonly lo90?: number;
  readonly hi90?: number;
}

export interface ThresholdScores {
  /** Share of sound cars whose median is at or above the threshold. */
  readonly false_alarm_no_fault: number | undefined;
  readonly n_no_fault: number;
  /** Share of holes at or above the threshold whose median is below it, or absent. */
  readonly missed: number | undefined;
  readonly n_at_or_above: number;
  readonly accuracy: number | undefined;
}

export interface SizeScores {
  readonly n_diameter: number;
  readonly no_diameter: number;
  readonly median_abs_ln: number | undefined;
  readonly p90_abs_ln: number | undefined;
  /** Mean of ln(d/d_true) over the holes that were given a diameter. */
  readonly bias_ln: number | undefined;
  readonly rmse_ln: number | undefined;
  /** Absent from a method that gives no interval at all. */
  readonly coverage90: number | undefined;
  readonly median_interval_ln_width: number | undefined;
  readonly rms_crb_ln: number | undefined;
  readonly rmse_over_crb: number | undefined;
  readonly thresholds: { readonly mm0_5: ThresholdScores; readonly mm1_0: ThresholdScores };
}

const sizesProcedure = (t: Truth) => t.procedure === 'A' || t.procedure === 'B';

export function scoreSizes(truths: readonly Truth[], sizes: ReadonlyMap<string, Size>, bounds: Bounds): SizeScores {
  const marked = truths.filter(
    (t) =>
      sizesProcedure(t) &&
      t.leak_d_equiv_mm >= MARKED_MM.least &&
      t.leak_d_equiv_mm <= MARKED_MM.most &&
      !t.faults.includes('gross_leak'),
  );
  const rows = marked.map((t) => {
    const size = sizes.get(t.case);
    const ln = size && size.median > 0 ? Math.log(size.median / t.leak_d_equiv_mm) : undefined;
    const { lo90, hi90 } = size ?? {};
    const interval = lo90 !== undefined && hi90 !== undefined ? { lo90, hi90 } : undefined;
    return {
      ln,
      charged: ln === undefined ? MOST_ABS_LN : Math.min(MOST_ABS_LN, Math.abs(ln)),
      covers: interval && interval.lo90 <= t.leak_d_equiv_mm && t.leak_d_equiv_mm <= interval.hi90,
      width:
        interval && interval.lo90 > 0 && interval.lo90 <= interval.hi90
          ? Math.log(interval.hi90 / interval.lo90)
          : undefined,
      bound: bounds.get(t.case),
    };
  });
  const charged = rows.map((r) => r.charged);
  const bounded = rows.filter((r) => r.bound !== undefined);
  const rmsBound = rootMeanSquare(bounded.map((r) => r.bound!));
  const rmsBounded = rootMeanSquare(bounded.map((r) => r.charged));
  return {
    n_diameter: rows.length,
    no_diameter: rows.filter((r) => r.ln === undefined).length,
    median_abs_ln: quantile(charged, 0.5),
    p90_abs_ln: quantile(charged, 0.9),
    bias_ln: mean(rows.flatMap((r) => r.ln ?? [])),
    rmse_ln: rootMeanSquare(charged),
    coverage90: rows.some((r) => r.covers !== undefined) ? share(rows.map((r) => r.covers === true)) : undefined,
    median_interval_ln_width: quantile(
      rows.flatMap((r) => r.width ?? []),
      0.5,
    ),
    rms_crb_ln: rmsBound,
    rmse_over_crb: rmsBound !== undefined && rmsBounded !== undefined ? rmsBounded / rmsBound : undefined,
    thresholds: {
      mm0_5: scoreThreshold(truths.filter(sizesProcedure), sizes, 0.5),
      mm1_0: scoreThreshold(truths.filter(sizesProcedure), sizes, 1),
    },
  };
}

/** Alarms of a test that calls every median at or above the threshold too large. */
function scoreThreshold(
  truths: readonly Truth[],
  sizes: ReadonlyMap<string, Size>,
  thresholdMm: number,
): ThresholdScores {
  const alarm = (t: Truth) => (sizes.get(t.case)?.median ?? Number.NEGATIVE_INFINITY) >= thresholdMm;
  const sound = truths.filter((t) => t.faults.length === 1 && t.faults[0] === 'none');
  const above = truths.filter((t) => t.leak_d_equiv_mm >= thresholdMm);
  const below = truths.filter((t) => t.leak_d_equiv_mm > 0 && t.leak_d_equiv_mm < thresholdMm);
  return {
    false_alarm_no_fault: share(sound.map(alarm)),
    n_no_fault: sound.length,
    missed: share(above.map((t) => !alarm(t))),
    n_at_or_above: above.length,
    accuracy: share([...above.map(alarm), ...[...below, ...sound].map((t) => !alarm(t))]),
  };
}
