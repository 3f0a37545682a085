/**
 * Drives and soaks with a known first blocking condition. What is driven is made here sample by sample, as a car's data
 * items would show it (whole degrees, whole km/h, steps of 1/255, items asked for in turn), with several attempts in one
 * recording, breaches that come later than the first, and breaches too short to count.
 */
import type { Recording } from '../../src/recording/recording.ts';
import { type RandomStream, randomStream } from '../../src/simulation/random.ts';
import type { LayoutId } from '../../src/system/car.ts';

export interface MadeDrive {
  readonly layout: LayoutId;
  readonly recording: Recording;
  /** Of each attempt: id of the condition that blocks first; `none` when the monitor can run. */
  readonly blockers: readonly string[];
  readonly parkedBeforeS: number;
}

interface Attempt {
  blocker: string;
  parkedBeforeS: number;
  airC: number;
  coolantAboveK: number;
  level: number;
  /** Level takes this value from a time in the drive on. */
  levelChange?: { atS: number; level: number };
  baroKpa: number;
  cruiseS: number;
  idleS: number;
  boostS: number;
  parkedAfterS: number;
  fillAtS?: number;
  airWhileParkedC: number;
  driveS?: number;
}

const BLOCKERS: Readonly<Partial<Record<LayoutId, readonly string[]>>> = {
  'engine-vacuum': [
    'none',
    'intake air at start',
    'coolant at start',
    'cold start',
    'parked before',
    'fuel level',
    'altitude',
    'cruise',
    'idle',
  ],
  'engine-off': ['none', 'fuel level', 'altitude', 'drive', 'ambient while parked', 'no refuelling', 'key off'],
  'pump-reference': ['none', 'fuel level', 'altitude', 'drive', 'ambient while parked', 'no refuelling', 'key off'],
  'two-path-purge': ['none', 'fuel level', 'altitude', 'warm engine', 'boost'],
};
const LAYOUTS = Object.keys(BLOCKERS) as LayoutId[];

const pick = <T>(random: RandomStream, items: readonly T[]): T => items[Math.floor(random.uniform() * items.length)]!;
const between = (random: RandomStream, low: number, high: number): number => low + (high - low) * random.uniform();

/** A sound attempt of the layout: every condition met with room to spare. */
function soundAttempt(random: RandomStream, layout: LayoutId): Attempt {
  return {
    blocker: 'none',
    parkedBeforeS: between(random, 8.2, 14) * 3600,
    airC: Math.round(between(random, 6, 29)),
    coolantAboveK: Math.round(between(random, -1, 5)),
    level: between(random, 0.17, 0.82),
    baroKpa: Math.round(between(random, 77, 102)),
    cruiseS: between(random, 640, 1300),
    idleS: between(random, 130, 300),
    boostS: between(random, 6.5, 12),
    parkedAfterS: layout === 'pump-reference' ? between(random, 5.1, 7) * 3600 : between(random, 47, 80) * 60,
    airWhileParkedC: Math.round(between(random, 6, 33)),
  };
}

/** Breaks one condition, near the limit as often as far from it. */
function breakCondition(random: RandomStream, layout: LayoutId, attempt: Attempt, blocker: string): void {
  const near = random.uniform() < 0.5;
  const high = random.uniform() < 0.5;
  attempt.blocker = blocker;
  switch (blocker) {
    case 'intake air at start':
      attempt.airC = high
        ? near
          ? 36
          : Math.round(between(random, 37, 45))
        : near
          ? 3
          : Math.round(between(random, -25, 2));
      break;
    case 'coolant at start':
      // Above the coolant's limit with air that is just within its own.
      attempt.airC = 34;
      attempt.coolantAboveK = near ? 2 : Math.round(between(random, 3, 30));
      break;
    case 'cold start':
      attempt.airC = Math.round(between(random, 6, 18));
      attempt.coolantAboveK = near ? 8 : Math.round(between(random, 9, 16));
      break;
    case 'parked before':
      attempt.parkedBeforeS = near ? between(random, 7.5, 7.9) * 3600 : between(random, 0.5, 6) * 3600;
      break;
    case 'fuel level': {
      const most = layout === 'pump-reference' ? 0.9 : 0.85;
      const wrong = high
        ? near
          ? most + 0.012
          : between(random, most + 0.02, 1)
        : near
          ? 0.138
          : between(random, 0.02, 0.13);
      if (random.uniform() < 0.5) attempt.level = wrong;
      else attempt.levelChange = { atS: between(random, 40, 300), level: wrong };
      break;
    }
    case 'altitude':
      attempt.baroKpa = Math.round(near ? (layout === 'pump-reference' ? 75 : 71) : between(random, 60, 70));
      break;
    case 'cruise':
      attempt.cruiseS = near ? between(random, 520, 570) : between(random, 30, 500);
      break;
    case 'idle':
      attempt.idleS = near ? between(random, 95, 112) : between(random, 5, 90);
      break;
    case 'drive':
    case 'warm engine':
      attempt.driveS = (layout === 'engine-off' ? 1200 : 600) * (near ? 0.95 : between(random, 0.2, 0.9));
      break;
    case 'boost':
      attempt.boostS = near ? between(random, 2.5, 3.5) : between(random, 0, 2);
      break;
    case 'ambient while parked':
      attempt.airWhileParkedC = high
        ? near
          ? 36
          : Math.round(between(random, 37, 44))
        : near
          ? 3
          : Math.round(between(random, -25, 2));
      break;
    case 'no refuelling':
      attempt.fillAtS = between(random, 120, attempt.parkedAfterS * 0.7);
      attempt.level = between(random, 0.2, 0.6);
      break;
    case 'key off':
      attempt.parkedAfterS =
        (layout === 'pump-reference' ? 5 : 0.75) * 3600 * (near ? 0.96 : between(random, 0.1, 0.9));
      break;
  }
}

/** A breach that comes after the first one and must not be named. */
function breakLater(random: RandomStream, attempt: Attempt): void {
  const first = attempt.blocker;
  const atStart = ['intake air at start', 'coolant at start', 'cold start', 'parked before', 'altitude'];
  if (atStart.includes(first) || (first === 'fuel level' && attempt.levelChange === undefined)) {
    if (first !== 'fuel level') attempt.levelChange = { atS: between(random, 120, 300), level: 0.93 };
    attempt.cruiseS = 200;
    attempt.parkedAfterS *= 0.5;
  } else if (first === 'fuel level') attempt.cruiseS = 400;
}

const LEAST_STEP_S = 1;

export function makeDrive(seed: number): MadeDrive {
  const random = randomStream(seed);
  const layout = LAYOUTS[seed % LAYOUTS.length]!;
  const count = 1 + Math.floor(random.uniform() * 3);
  const attempts = Array.from({ length: count }, () => {
    const attempt = soundAttempt(random, layout);
    const blocker = pick(random, BLOCKERS[layout]!);
    if (blocker !== 'none') {
      breakCondition(random, layout, attempt, blocker);
      if (random.uniform() < 0.4) breakLater(random, attempt);
    }
    return attempt;
  });
  if (layout === 'engine-vacuum') for (const attempt of attempts) attempt.parkedAfterS = 120;
  // A next start ends the time parked, so it is as long as this attempt wants.
  for (let k = 1; k < count; k++)
    if (layout === 'engine-vacuum') attempts[k - 1]!.parkedAfterS = attempts[k]!.parkedBeforeS;
  return {
    layout,
    recording: drive(random, layout, attempts),
    blockers: attempts.map(({ blocker }) => blocker),
    parkedBeforeS: attempts[0]!.parkedBeforeS - 60,
  };
}

function drive(random: RandomStream, layout: LayoutId, attempts: readonly Attempt[]): Recording {
  const rows: {
    t: number;
    rpm: number;
    kmh: number;
    airC: number;
    coolantC: number;
    level: number;
    baro: number;
    map: number;
    ambientC: number;
  }[] = [];
  let t = 0;
  const first = attempts[0]!;
  for (; t < 60; t += LEAST_STEP_S)
    rows.push({
      t,
      rpm: 0,
      kmh: 0,
      airC: first.airC,
      coolantC: first.airC + first.coolantAboveK,
      level: first.level,
      baro: first.baroKpa,
      map: first.baroKpa,
      ambientC: first.airC,
    });
  attempts.forEach((attempt, k) => {
    const startS = t;
    let coolantC = attempt.airC + attempt.coolantAboveK;
    let sloshed = 0;
    const legs: { s: number; kmh: () => number; map: () => number }[] = [];
    const wander = (low: number, high: number) => () => between(random, low, high);
    if (attempt.driveS !== undefined) legs.push({ s: attempt.driveS, kmh: wander(20, 90), map: wander(30, 70) });
    else {
      legs.push({ s: attempt.idleS, kmh: () => 0, map: wander(30, 40) });
      legs.push({ s: 60, kmh: wander(15, 55), map: wander(40, 70) });
      // The cruise in two pieces with a village between.
      legs.push({ s: attempt.cruiseS * 0.6, kmh: wander(67, 115), map: wander(45, 75) });
      if (layout === 'two-path-purge') {
        // Cut to the second in which the item changes, with a rest before and behind.
        legs.push({ s: attempt.boostS, kmh: wander(67, 115), map: () => attempt.baroKpa + between(random, 12, 60) });
      }
      legs.push({ s: 45, kmh: wander(30, 55), map: wander(40, 60) });
      legs.push({ s: attempt.cruiseS * 0.4, kmh: wander(67, 115), map: wander(45, 75) });
      legs.push({ s: 30, kmh: wander(5, 40), map: wander(30, 50) });
      const least = layout === 'engine-off' ? 1300 : layout === 'engine-vacuum' ? 0 : 700;
      const so = legs.reduce((sum, leg) => sum + leg.s, 0);
      if (so < least) legs.push({ s: least - so, kmh: wander(20, 60), map: wander(35, 60) });
    }
    for (const leg of legs) {
      const until = t + leg.s;
      for (; t < until; t += LEAST_STEP_S) {
        coolantC += (92 - coolantC) * 0.004;
        if (sloshed < -10 && random.uniform() < 0.002) sloshed = 3;
        const base =
          attempt.levelChange !== undefined && t - startS >= attempt.levelChange.atS
            ? attempt.levelChange.level
            : attempt.level;
        // Slosh beyond the limits that is over before it counts.
        const level = sloshed-- > 0 && attempt.blocker !== 'fuel level' ? 0.95 : base;
        const kmh = leg.kmh();
        rows.push({
          t,
          rpm: 700 + 25 * kmh,
          kmh,
          airC: attempt.airC,
          coolantC,
          level,
          baro: attempt.baroKpa,
          map: leg.map(),
          ambientC: attempt.airC,
        });
      }
    }
    const stopS = t;
    const next = attempts[k + 1];
    const step = attempt.parkedAfterS > 1800 ? 10 : LEAST_STEP_S;
    let level = attempt.levelChange?.level ?? attempt.level;
    for (; t < stopS + attempt.parkedAfterS; t += step) {
      if (attempt.fillAtS !== undefined && t - stopS > attempt.fillAtS) level = Math.min(1, attempt.level + 0.2);
      // Towards the next start the car is as the next attempt finds it.
      const isLate = next !== undefined && t > stopS + attempt.parkedAfterS - 40;
      if (isLate && layout === 'engine-vacuum') {
        rows.push({
          t,
          rpm: 0,
          kmh: 0,
          airC: next.airC,
          coolantC: next.airC + next.coolantAboveK,
          level: next.level,
          baro: next.baroKpa,
          map: next.baroKpa,
          ambientC: next.airC,
        });
        continue;
      }
      coolantC += (attempt.airWhileParkedC - coolantC) * 1e-4 * step;
      rows.push({
        t,
        rpm: 0,
        kmh: 0,
        airC: attempt.airWhileParkedC,
        coolantC,
        level,
        baro: attempt.baroKpa,
        map: attempt.baroKpa,
        ambientC: attempt.airWhileParkedC,
      });
    }
  });
  // A last start, so that a time parked too short is seen to end; it is no attempt that counts.
  if (attempts.at(-1)!.blocker === 'key off')
    for (const until = t + 30; t < until; t += LEAST_STEP_S) rows.push({ ...rows.at(-1)!, t, rpm: 800 });
  return toRecording(random, rows);
}

function toRecording(
  random: RandomStream,
  rows: readonly {
    t: number;
    rpm: number;
    kmh: number;
    airC: number;
    coolantC: number;
    level: number;
    baro: number;
    map: number;
    ambientC: number;
  }[],
): Recording {
  const column = (value: (row: (typeof rows)[number]) => number, everyRow: number, dropped: number): Float64Array =>
    Float64Array.from(rows, (row, i) => (i % everyRow !== 0 || random.uniform() < dropped ? Number.NaN : value(row)));
  const whole = (celsius: number): number => Math.round(celsius) + 273.15;
  return {
    label: 'made',
    timeS: Float64Array.from(rows, ({ t }, i) => t + (i > 0 ? 0.2 * random.uniform() : 0)),
    channels: {
      engineSpeedRpm: column(({ rpm }) => rpm, 1, 0),
      vehicleSpeedMPerS: column(({ kmh }) => Math.round(kmh) / 3.6, 1, 0.02),
      intakeTemperatureK: column(({ airC }) => whole(airC), 5, 0.05),
      coolantTemperatureK: column(({ coolantC }) => whole(coolantC), 1, 0.02),
      fuelLevel: column(({ level }) => Math.round(255 * level) / 255, 1, 0.02),
      barometricPa: column(({ baro }) => baro * 1000, 7, 0),
      manifoldAbsPa: column(({ map }) => Math.round(map) * 1000, 1, 0),
      ambientTemperatureK: column(({ ambientC }) => whole(ambientC), 5, 0),
    },
  };
}
