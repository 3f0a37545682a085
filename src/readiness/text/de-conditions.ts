import type { ChannelName } from '../../recording/recording.ts';
import type { Limits } from '../condition-result.ts';
import { CHANNELS_DE } from './channels-de.ts';
import type { ReadinessFigures } from './figures.ts';
import type { ConditionWords } from './readiness-words.ts';

const IDS: Readonly<Record<string, string>> = {
  'fuel level': 'Füllstand',
  altitude: 'Höhe',
  'related codes': 'zugehörige Fehlercodes',
  'intake air at start': 'Ansaugluft beim Start',
  'coolant at start': 'Kühlmittel beim Start',
  'cold start': 'Kaltstart',
  'parked before': 'Standzeit vorher',
  cruise: 'gleichmäßige Fahrt',
  idle: 'Leerlauf',
  drive: 'Fahrt',
  'warm engine': 'warmer Motor',
  boost: 'Ladedruck',
  'ambient while parked': 'Außenluft beim Stehen',
  'no refuelling': 'nicht getankt',
  'key off': 'Zündung aus',
  'temperature swing': 'Temperaturgang',
};

const MARKS: readonly (readonly [english: string, german: string])[] = [
  ['the car’s own service information wins', 'die Herstellerunterlagen des Fahrzeugs gehen vor'],
  ['common practice, no source', 'übliche Praxis, ohne Quelle'],
  ['common practice', 'übliche Praxis'],
  ['upper limit 13 CCR', 'obere Grenze 13 CCR'],
  ['lower from memory, general exceptions', 'untere aus dem Gedächtnis, allgemeine Ausnahmen'],
  ['from memory', 'aus dem Gedächtnis'],
  ['one quoted example: off for 8 h or more', 'ein zitiertes Beispiel: 8 h oder länger aus'],
  ['judgement: a sealed hold needs 5 K', 'Einschätzung: geschlossenes Halten braucht 5 K'],
  ['below 2400 m', 'unter 2400 m'],
  ['10 to 20 minutes', '10 bis 20 Minuten'],
  ['2 to 5 minutes', '2 bis 5 Minuten'],
  ['given by hand', 'von Hand angegeben'],
  [' to ', ' bis '],
  ['degF', '°F'],
];

function range(channel: ChannelName, { low, high }: Limits, f: ReadinessFigures): string {
  if (low !== undefined && high !== undefined) return `zwischen ${f.of(channel, low)} und ${f.of(channel, high)}`;
  if (low !== undefined) return `mindestens ${f.of(channel, low)}`;
  return high === undefined ? 'beliebig' : `höchstens ${f.of(channel, high)}`;
}

function limit(channel: ChannelName, value: number, limits: Limits, f: ReadinessFigures): string {
  if (limits.low !== undefined && value < limits.low) return `verlangt sind mindestens ${f.of(channel, limits.low)}`;
  if (limits.high !== undefined && value > limits.high) return `Grenze ${f.of(channel, limits.high)}`;
  return range(channel, limits, f);
}

export const CONDITIONS_DE: ConditionWords = {
  channel: (channel) => CHANNELS_DE[channel],
  condition: (id) => IDS[id] ?? id,
  mark: (mark) => MARKS.reduce((text, [english, german]) => text.replaceAll(english, german), mark),
  wanted: (condition, f) => {
    switch (condition.kind) {
      case 'at-start':
        return `${CHANNELS_DE[condition.channel]} beim Motorstart ${range(condition.channel, condition, f)}`;
      case 'cold-start':
        return `Kühlmittel beim Motorstart höchstens ${f.kelvins(condition.mostK)} über ${CHANNELS_DE[condition.air]}`;
      case 'parked-before':
        return `Motor vor dem Start mindestens ${f.duration(condition.leastS)} aus`;
      case 'throughout':
        return `${CHANNELS_DE[condition.channel]} ${range(condition.channel, condition, f)}, bis die Eigendiagnose fertig ist; außerhalb höchstens ${f.duration(condition.toleratedS)}`;
      case 'time-in-range':
        return `${CHANNELS_DE[condition.channel]} ${range(condition.channel, condition, f)}, ${f.duration(condition.leastS)} ${condition.unbroken ? 'am Stück' : 'insgesamt'}`;
      case 'engine-runs':
        return `Motor läuft ${f.duration(condition.leastS)} am Stück`;
      case 'boost':
        return `Saugrohr ${f.pascals(condition.abovePa)} oder mehr über Luftdruck, ${f.duration(condition.leastS)} am Stück`;
      case 'parked-after':
        return `Zündung nach der Fahrt ${f.duration(condition.leastS)} aus`;
      case 'while-parked':
        return `${CHANNELS_DE[condition.channel]} beim Stehen nach der Fahrt ${range(condition.channel, condition, f)}`;
      case 'no-refuelling':
        return `beim Stehen nicht getankt: Füllstand steigt höchstens um ${f.percent(condition.mostRise)}`;
      case 'swing':
        return `Außentemperatur ändert sich beim Stehen um ${f.kelvins(condition.leastK)} oder mehr`;
      case 'no-codes':
        return `keiner von diesen gespeichert oder vorläufig: ${condition.codes.join(', ')}`;
    }
  },
  found: ({ fact, outcome }, f) => {
    switch (fact.kind) {
      case 'start-unseen':
        return 'die Aufzeichnung beginnt bei laufendem Motor: der Start ist nicht zu sehen';
      case 'not-recorded':
        return `${CHANNELS_DE[fact.channel]}${fact.whileParked === true ? ' beim Stehen' : ''} nicht aufgezeichnet`;
      case 'at-start':
        return `${CHANNELS_DE[fact.channel]} beim Start ${f.of(fact.channel, fact.value)}, ${limit(fact.channel, fact.value, fact.limits, f)}`;
      case 'cold-start':
        return `Kühlmittel beim Start ${f.kelvins(Math.abs(fact.aboveK))} ${fact.aboveK < 0 ? 'unter' : 'über'} ${CHANNELS_DE[fact.air]}, Grenze ${f.kelvins(fact.mostK)} darüber`;
      case 'parked-before': {
        const wanted = `verlangt sind ${f.duration(fact.leastS)}`;
        if (fact.seconds === undefined) return `wie lange er vorher stand, ist nicht bekannt, ${wanted}`;
        const how = outcome === 'blocked' ? 'nur ' : outcome === 'unknown' ? 'mindestens ' : '';
        return `stand vorher ${how}${f.duration(fact.seconds)}, ${wanted}`;
      }
      case 'throughout':
        return fact.value === undefined
          ? `${CHANNELS_DE[fact.channel]} bleibt in den Grenzen`
          : `${CHANNELS_DE[fact.channel]} ${f.of(fact.channel, fact.value)}, ${limit(fact.channel, fact.value, fact.limits, f)}${fact.afterDone === true ? ', aber erst, als alles andere getan war' : ''}`;
      case 'time-in-range': {
        const name = `${CHANNELS_DE[fact.channel]} ${range(fact.channel, fact.limits, f)}`;
        return outcome === 'met'
          ? `${name}: ${f.duration(fact.leastS)} erreicht`
          : `${name}: nur ${f.duration(fact.reachedS)}, verlangt sind ${f.duration(fact.leastS)}${fact.unbroken ? ' am Stück' : ''}`;
      }
      case 'engine-runs':
        return `Motor lief ${outcome === 'met' ? '' : 'nur '}${f.duration(fact.ranS)}, verlangt sind ${f.duration(fact.leastS)}`;
      case 'boost':
        return outcome === 'met'
          ? `Ladedruck ${f.duration(fact.leastS)} lang`
          : `Ladedruck nur ${f.duration(fact.reachedS)} lang, verlangt sind ${f.duration(fact.leastS)} am Stück`;
      case 'parked-after': {
        const wanted = `verlangt sind ${f.duration(fact.leastS)}`;
        if (outcome === 'met') return `Zündung ${f.duration(fact.offS)} aus, ${wanted}`;
        return outcome === 'blocked'
          ? `Zündung nach ${f.duration(fact.offS)} wieder an, ${wanted}`
          : `die Aufzeichnung endet ${f.duration(fact.offS)} nach dem Ausschalten, ${wanted}`;
      }
      case 'while-parked':
        return fact.value === undefined
          ? `${CHANNELS_DE[fact.channel]} beim Stehen in den Grenzen`
          : `${CHANNELS_DE[fact.channel]} beim Stehen ${f.of(fact.channel, fact.value)}, ${limit(fact.channel, fact.value, fact.limits, f)}`;
      case 'no-refuelling':
        return fact.rise === undefined
          ? 'beim Stehen wurde nicht getankt'
          : `Füllstand steigt beim Stehen um ${f.percent(fact.rise)}: es wurde getankt`;
      case 'swing':
        if (outcome === 'met') return `Außentemperatur ändert sich um ${f.kelvins(fact.leastK)}`;
        return `Außentemperatur ändert sich beim Stehen um ${f.kelvins(fact.swingK)}, verlangt sind ${f.kelvins(fact.leastK)}${outcome === 'unknown' ? ', und die Aufzeichnung endet vorher' : ''}`;
      case 'codes-not-read':
        return 'die Fehlercodes wurden nicht gelesen';
      case 'no-codes':
        return fact.found.length === 0
          ? 'kein zugehöriger Code ist gespeichert oder vorläufig'
          : `${fact.found.join(', ')} gespeichert oder vorläufig: die Eigendiagnose wartet auf die Reparatur`;
    }
  },
};
