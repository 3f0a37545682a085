/**
 * Small likelihoods for numbers: for each outcome of a check, the density of what was read if that outcome is the true
 * state of the car; and what the numbers mean by themselves. Instrument errors are judgement unless marked.
 */
import type { Interval } from '../../diagnosis/finding.ts';
import { coilResistanceAt20C } from '../../physics/coil.ts';
import { effectiveAreaFromDiameter, parallelDiameter } from '../../physics/equivalent-diameter.ts';
import { decayedDifference, decayRate } from '../../physics/vacuum-decay.ts';
import type { NumericLikelihood } from '../check.ts';
import type { SetupFaultId } from '../setups.ts';
import type { Derived } from './derived.ts';
import { sizeReading, steady, steadyLn } from './sizes.ts';

/** Readings by field, SI. */
export type Readings = Readonly<Record<string, number>>;

export interface Meaning {
  /** In the order of the check's outcomes. */
  readonly byOutcome: readonly number[];
  readonly bySetupFault?: Readonly<Partial<Record<SetupFaultId, number>>>;
  /** Equivalent diameters that the numbers speak for, by section or whole, mm. */
  readonly diametersMm?: Readonly<Record<string, Interval>>;
  /** Other quantities by name, SI; their kinds stand in `derived.ts`. */
  readonly derived?: Readonly<Partial<Record<Derived, number>>>;
}

/** Air at 20 degC and sea level: specific gas constant [J/(kg K)], temperature [K], pressure [Pa]. */
const R_AIR = 287.05;
const T_K = 293.15;
const P_PA = 101_325;
const DENSITY = P_PA / (R_AIR * T_K);

/** Flow meter: share of the reading, and standing error [m3/s]. */
const FLOW_ERROR = { share: 0.07, standing: (0.02 * 1e-3) / 60 };
/** A blank that flows more than this speaks for a leaking adaptor [m3/s]. */
const BLANK_FLOW = (0.03 * 1e-3) / 60;
/** Hold: pressure that temperature and vapour move by themselves, per root of a minute [Pa], and error of the volume. */
const DRIFT_PA = 80;
const VOLUME_ERROR = 0.15;
/** Diameters from a section: share, and standing error [mm]. */
const SECTION_ERROR = { share: 0.1, standingMm: 0.08 };
/** Coil at 20 degC: median [ohm] and spread of ln, from memory (14 to 60 ohm are met). */
const COIL = { median: 28, sd: 0.4 };
/** ln-spread of a coil that is open or shorted: anything from a hundredth to a million ohm. */
const BAD_COIL_SD = 6;
/** Sensor zero: error of a sound one and of a skewed one [Pa]; gains likewise [-]. */
const ZERO = { sound: 60, skewed: 500 };
const GAIN = { sound: 0.03, skewed: 0.2 };
const PRESSURE_ERROR_PA = 20;
/** Working capacity of a canister when none is given [kg], from memory (0.10 to 0.20). */
const CAPACITY_KG = 0.15;

const orificeFlow = (diameterMm: number, differencePa: number): number =>
  effectiveAreaFromDiameter(diameterMm * 1e-3) * Math.sqrt((2 * differencePa) / DENSITY);

function flow(r: Readings): Meaning {
  const blank = r['blank flow'] ?? 0;
  const size = sizeReading((d) => {
    const expected = orificeFlow(d, r.pressure!);
    const sd = Math.hypot(FLOW_ERROR.standing, FLOW_ERROR.share * expected);
    return steady(r.flow! - blank, expected, sd);
  });
  return {
    byOutcome: [size.tight, size.leak],
    diametersMm: { whole: size.diameterMm },
    ...(r['blank flow'] === undefined ? {} : { bySetupFault: { 'adaptor leaks': blank > BLANK_FLOW ? 4 : 0.15 } }),
  };
}

function hold(r: Readings): Meaning {
  const start = Math.abs(r.start!);
  const end = Math.abs(r.end!);
  const drift = DRIFT_PA * Math.sqrt(Math.max(1, r.time! / 60));
  const size = sizeReading((d) => {
    const area = effectiveAreaFromDiameter(d * 1e-3);
    const rate = decayRate(area, r['vapour volume']!, T_K, P_PA, R_AIR);
    const expected = decayedDifference(start, r.time!, rate);
    return steady(end, expected, Math.hypot(drift, VOLUME_ERROR * (start - expected)));
  });
  return { byOutcome: [size.tight, size.leak], diametersMm: { whole: size.diameterMm } };
}

const sectionReading = (meanMm: number) =>
  sizeReading((d) => steady(meanMm, d, Math.hypot(SECTION_ERROR.standingMm, SECTION_ERROR.share * d)));

function sections(r: Readings): Meaning {
  const names = ['purge side', 'canister and vent', 'tank and neck'] as const;
  const readings = names.map((name) => sectionReading(r[name]! * 1e3));
  const product = (leaking: number) =>
    readings.reduce((all, reading, i) => all * (i === leaking ? reading.leak : reading.tight), 1);
  const sumMm = parallelDiameter(names.map((name) => r[name]! * 1e3));
  const wholeM = r['whole system'];
  const meaning = {
    byOutcome: [product(-1), product(0), product(1), product(2)],
    diametersMm: Object.fromEntries(names.map((name, i) => [name, readings[i]!.diameterMm])),
    derived: { 'sum by area': sumMm * 1e-3 },
  };
  if (wholeM === undefined) return meaning;
  // areas add: sections that together flow more than the whole let gas through the clamps
  const sd = Math.hypot(SECTION_ERROR.standingMm, SECTION_ERROR.share * sumMm);
  const excess = sumMm - wholeM * 1e3;
  const fits = steady(excess, 0, 1.5 * sd);
  const leaking = excess > 0 ? steady(excess, Math.max(excess, 2 * sd), 4 * sd) : steady(excess, 0, 1.5 * sd) / 4;
  return { ...meaning, bySetupFault: { 'clamp leaks': Math.min(20, Math.max(0.05, leaking / fits)) } };
}

function coils(r: Readings): Meaning {
  const at20 = (name: string) => Math.max(0.01, coilResistanceAt20C(r[name]!, r['coil temperature']!));
  const purge = at20('purge coil');
  const vent = at20('vent coil');
  const sound = (ohm: number) => steadyLn(ohm, COIL.median, COIL.sd);
  const bad = (ohm: number) => steadyLn(ohm, COIL.median, BAD_COIL_SD);
  return {
    byOutcome: [sound(purge) * sound(vent), bad(purge) * sound(vent), sound(purge) * bad(vent)],
    derived: { 'purge coil at 20 °C': purge, 'vent coil at 20 °C': vent },
  };
}

function sensorZero(r: Readings): Meaning {
  const reading = r.reading!;
  return {
    byOutcome: [steady(reading, 0, ZERO.sound), steady(reading, 0, Math.hypot(ZERO.sound, ZERO.skewed))],
    derived: { offset: reading },
  };
}

function twoReadings(r: Readings): Meaning {
  const span = r['second applied']! - r['first applied']!;
  const gain = (r['second reading']! - r['first reading']!) / span;
  const offset = r['first reading']! - gain * r['first applied']!;
  const gainError = (Math.SQRT2 * PRESSURE_ERROR_PA) / Math.abs(span);
  const offsetError = PRESSURE_ERROR_PA + gainError * Math.abs(r['first applied']!);
  const sound =
    steady(gain, 1, Math.hypot(GAIN.sound, gainError)) * steady(offset, 0, Math.hypot(ZERO.sound, offsetError));
  // skewed in one way or in the other
  const skewed =
    0.35 *
      steady(gain, 1, Math.hypot(GAIN.skewed, gainError)) *
      steady(offset, 0, Math.hypot(ZERO.sound, offsetError)) +
    0.65 * steady(gain, 1, Math.hypot(GAIN.sound, gainError)) * steady(offset, 0, Math.hypot(ZERO.skewed, offsetError));
  return { byOutcome: [sound, skewed], derived: { gain, offset } };
}

function canisterWeight(r: Readings): Meaning {
  const capacity = r['working capacity'] ?? CAPACITY_KG;
  const loading = (r.weight! - r['dry weight']!) / capacity;
  return { byOutcome: [steady(loading, 0.3, 0.25), steady(loading, 1.2, 0.45)], derived: { loading } };
}

/** Flow that the drop is compared at [m3/s]: 10 L/min. */
const COMPARED_FLOW = (10 * 1e-3) / 60;

function ventDrop(r: Readings): Meaning {
  const drop = Math.max(1, r.drop! * (COMPARED_FLOW / r.flow!) ** 2);
  return {
    // free: below one or two inH2O at 10 L/min (judgement); choked: several
    byOutcome: [steadyLn(drop, 100, 0.7), steadyLn(drop, 1800, 0.9)],
    derived: { 'drop at 10 L/min': drop },
  };
}

function seatLoss(r: Readings): Meaning {
  const lost = Math.min(1, Math.max(0.002, 1 - r['after 30 s']! / r.start!));
  // sound: less than 5 % in 30 s (common practice, no source)
  return { byOutcome: [steadyLn(lost, 0.015, 0.7), steadyLn(lost, 0.3, 0.8)], derived: { 'lost in 30 s': lost } };
}

function pumpRatio(r: Readings): Meaning {
  const before = Math.abs(r['reference before']!);
  const after = Math.abs(r['reference after']!);
  const mean = Math.sqrt(before * after);
  const ratio = Math.abs(r.tank!) / mean;
  const drift = Math.log(after / before);
  const agree = steady(drift, 0, 0.05);
  return {
    // references agree within a tenth (common practice, no source); the tank must pass them
    byOutcome: [
      agree * steadyLn(Math.max(0.01, ratio), 1.4, 0.2),
      steady(drift, 0, 0.35) * steadyLn(Math.max(0.01, ratio), 1, 0.7),
      agree * steadyLn(Math.max(0.01, ratio), 0.5, 0.6),
    ],
    derived: { 'tank over reference': ratio },
  };
}

function sizeChange(r: Readings): Meaning {
  const before = Math.max(0.02, r.before! * 1e3);
  const after = Math.max(0.02, r.after! * 1e3);
  const floor = (mm: number) => Math.hypot(SECTION_ERROR.share, SECTION_ERROR.standingMm / mm);
  const sd = Math.min(1.5, Math.hypot(floor(before), floor(after)));
  const change = Math.log(after / before);
  // gone or much smaller: anything down to a tight system
  return {
    byOutcome: [steady(change, 0, sd), steady(change, -1.2, Math.hypot(0.7, sd))],
    derived: { 'after over before': after / before },
  };
}

export const NUMERIC: Readonly<Record<NumericLikelihood, (readings: Readings) => Meaning>> = {
  flow,
  hold,
  sections,
  coils,
  'sensor zero': sensorZero,
  'two readings': twoReadings,
  'canister weight': canisterWeight,
  'vent drop': ventDrop,
  'seat loss': seatLoss,
  'pump ratio': pumpRatio,
  'size change': sizeChange,
};
