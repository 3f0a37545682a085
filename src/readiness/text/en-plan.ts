import type { PlanWords } from './readiness-words.ts';

const times = (count: number): string => `${count} attempt${count === 1 ? '' : 's'}`;

export const PLAN_EN: PlanWords = {
  forecastWanted: (wanted) => {
    switch (wanted.kind) {
      case 'hour-and-temperature':
        return 'an hour and a temperature, as "06:00 4.5" or "6 am 40 F"';
      case 'hour-of-day':
        return 'an hour from 0 to 23';
      case 'outside-air':
        return 'a temperature of outside air';
      case 'later-hour':
        return `an hour after ${wanted.after}`;
    }
  },
  step: (step, f) => {
    switch (step.kind) {
      case 'idle':
        return `start and let it idle for ${f.duration(step.seconds)}`;
      case 'cruise':
        return `drive ${f.duration(step.seconds)} steadily at ${f.of('vehicleSpeedMPerS', step.low)} to ${f.of('vehicleSpeedMPerS', step.high)} with a light foot, as law and traffic allow`;
      case 'drive':
        return `drive ${f.duration(step.seconds)} without stopping the engine`;
      case 'pull':
        return `one full pull of ${f.duration(step.seconds)} or more, as on a merging lane, warm engine, where it is safe`;
      case 'no-stop':
        return 'do not stop the engine in between';
      case 'leave':
        return `then switch off and leave it alone for ${f.duration(step.seconds)} or more`;
    }
  },
  note: (note, f) =>
    note.kind === 'near-limits'
      ? `${f.temperature(note.temperatureK)} at start is near or beyond the limits`
      : 'the garage is warmer than the air outside by more than the car allows: park outdoors',
  remark: (remark, f) => {
    switch (remark.kind) {
      case 'level-unknown':
        return `Fuel level is not known: it must be within ${f.percent(remark.low)} to ${f.percent(remark.high)}, best about half.`;
      case 'level-above':
        return `Fuel level ${f.percent(remark.level ?? 0)} is above ${f.percent(remark.low)} to ${f.percent(remark.high)}: drive it down first, to about ${f.percent(0.6)}.`;
      case 'level-below':
        return `Fuel level ${f.percent(remark.level ?? 0)} is below ${f.percent(remark.low)} to ${f.percent(remark.high)}: add fuel to about half, then park.`;
      case 'level-near-end':
        return `Fuel level ${f.percent(remark.level ?? 0)} is near the end of ${f.percent(remark.low)} to ${f.percent(remark.high)}: keep it between ${f.percent(0.3)} and ${f.percent(0.7)}.`;
      case 'no-start':
        return 'No start within the forecast meets the conditions.';
      case 'by-inspection':
        return `Inspection in ${remark.days} day${remark.days === 1 ? '' : 's'} (${remark.date}): ${times(remark.attempts)}, ${f.percent(remark.probability)} that the monitor has run by then.`;
      case 'not-enough':
        return 'That is not enough to count on: ask the inspection station for an extension or a later date now.';
      case 'forecast-ends':
        return `The forecast ends on ${remark.date}, before the inspection: plan again with a newer one.`;
      case 'within-forecast':
        return `${times(remark.attempts)} within the forecast: ${f.percent(remark.probability)} that the monitor has run after ${remark.attempts === 1 ? 'it' : 'them'}.`;
      case 'enough-by':
        return `90 % is reached with the attempt of ${remark.date}.`;
      case 'routine-in-the-way':
        return `The usual drives break the time parked. With the car left alone but for the planned drives it would be ${f.percent(remark.probability)}.`;
      case 'judgement':
        return 'Probabilities rest on judgement for traffic, forecast error and how often a healthy car tests; they are a guide, no promise.';
    }
  },
  avoid: (avoid, f) => {
    switch (avoid.kind) {
      case 'clearing':
        return 'Do not clear codes and do not take the battery off: every monitor would start anew.';
      case 'start-before':
        return `No start, not even a short one, in the ${f.duration(avoid.seconds)} before.`;
      case 'key-after':
        return `Do not turn the key on or plug in a tool in the ${f.duration(avoid.seconds)} after the drive.`;
      case 'refuelling':
        return 'No refuelling between the drive and the end of the time parked.';
      case 'topping-off':
        return 'No topping off; close the cap until it clicks, before the soak and not after it.';
      case 'heated-garage':
        return 'No heated garage: coolant and air must be equally cold.';
    }
  },
  outlook: ({ because, peaks, passHighGaugePa, passLowGaugePa }, f) => {
    const [sound] = peaks;
    const hole = peaks[2] ?? sound;
    const show = (peak: typeof sound): string =>
      peak === undefined ? '' : `${f.pascals(peak.highestGaugePa)} to ${f.pascals(peak.lowestGaugePa)}`;
    const targets = `targets +${f.pascals(passHighGaugePa)} and ${f.pascals(passLowGaugePa)}`;
    if (because === 'told-apart')
      return `Can tell: a tight car reaches ${show(sound)}, one with a 0.5 mm (0.020 in) hole ${show(hole)} (${targets}; typical, check the car’s own).`;
    return because === 'hole-passes'
      ? `Cannot tell: even with a 0.5 mm (0.020 in) hole it would reach ${show(hole)} and pass (${targets}): the vapour makes up for the hole. Wait for a cooler fuel or a lower level of volatility.`
      : `Cannot tell: a tight car reaches only ${show(sound)} (${targets}): too little heat or swing for this vapour volume. Drive longer before, or wait for a night that cools more.`;
  },
  noHole: 'tight',
  plateau:
    'In a slow swing the pressure that a hole leaves goes with one over the fourth power of its diameter: half the hole, sixteen times the pressure. A 0.25 mm (0.010 in) hole may pass where 0.5 mm (0.020 in) fails clearly, and swing and vapour volume decide more than the car does.',
};
