/**
 * What the recording room says in English sentences, in German. Each row is the shape of a sentence and how German says
 * it; a sentence of another shape stays as it is, so nothing is ever lost.
 */
import { CHANNELS_DE } from '../readiness/text/channels-de.ts';
import { channelInWords } from '../recording/own-columns.ts';
import { SKIP_REASONS } from '../recording/read-report.ts';
import { CHANNELS, type ChannelName } from '../recording/recording.ts';
import { type SaidRow, sayWith } from './said.ts';

const WORDS = new Map<string, string>([
  ...(Object.keys(CHANNELS) as ChannelName[]).flatMap((name): [string, string][] => [
    [channelInWords(name), CHANNELS_DE[name]],
    [name, CHANNELS_DE[name]],
  ]),
  ['of no use', 'nicht zu brauchen'],
  ['as a fraction', 'als Anteil'],
  ['on/off', 'an/aus'],
]);
const word = (text: string): string => WORDS.get(text.trim()) ?? text;
const comma = (text: string): string => text.replace(/(\d)\.(\d)/g, '$1,$2');

const SKIPS_DE: Readonly<Record<keyof typeof SKIP_REASONS, string>> = {
  preamble: 'steht vor der Kopfzeile',
  header: 'ist die Kopfzeile',
  'unit-row': 'ist die Zeile der Einheiten unter der Kopfzeile',
  'repeated-header': 'wiederholt Kopfzeile oder Einheiten',
  blank: 'ist leer',
  comment: 'ist ein Kommentar',
  'too-few-cells': 'hat weniger Zellen als die Kopfzeile',
  'too-many-cells': 'hat mehr Zellen als die Kopfzeile',
  'no-time': 'hat eine leere Zeitzelle',
  'unreadable-time': 'hat eine Zeitzelle, die sich nicht lesen lässt',
  'duplicated-time': 'hat dieselbe Zeit wie der Messwert davor; der erste gilt',
  'backward-time': 'hat eine Zeit vor dem letzten Messwert; sie bleibt weg, bis die Zeit wieder so weit ist',
  'other-frame': 'ist eine Botschaft, die zu keiner Messung gehört',
  'time-ahead': 'hat eine Zeit, die allen folgenden Zeilen voraus ist',
};

const ROWS: readonly SaidRow[] = [
  [
    /^([\d.]+) samples per second, (?:none missing|about (\d+) missing)$/,
    (_, rate, missing) =>
      `${comma(rate)} Messwerte je Sekunde, ${missing === '' ? 'keiner fehlt' : `etwa ${missing} fehlen`}`,
  ],
  [
    /^one sample every (.+), (?:none missing|about (\d+) missing)$/,
    (_, every, missing) =>
      `ein Messwert alle ${comma(every)}, ${missing === '' ? 'keiner fehlt' : `etwa ${missing} fehlen`}`,
  ],
  [/^pause from (.+) to (.+)$/, (_, from, to) => `Pause von ${comma(from)} bis ${comma(to)}`],
  [/^(\d+) more pauses$/, (_, count) => `${count} weitere Pausen`],
  [/^a (PNG|JPEG|GIF) picture$/, (_, kind) => `ein ${kind}-Bild`],
  [/^no tank pressure$/, () => 'kein Tankdruck'],
  [/^there is no tank pressure$/, () => 'Es gibt keinen Tankdruck'],
  [
    /^tank pressure: ((?:steps of|noise) .+)$/,
    (_, rest) => `Tankdruck: ${comma(rest).replace('steps of', 'Stufen von').replace('noise', 'Rauschen')}`,
  ],
  [/^(.+) does not move at all$/, (_, name) => `${word(name)} bewegt sich gar nicht`],
  [
    /^(.+) stands at the end of its range for (.+) of the time$/,
    (_, name, share) => `${word(name)} steht ${comma(share)} der Zeit am Ende des Messbereichs`,
  ],
  [
    /^(.+): (\d+) of (\d+) samples absent$/,
    (_, name, gone, all) => `${word(name)}: ${gone} von ${all} Messwerten fehlen`,
  ],
  [
    /^(.+): (\d+) single spikes?$/,
    (_, name, count) => `${word(name)}: ${count} ${count === '1' ? 'einzelner Ausreißer' : 'einzelne Ausreißer'}`,
  ],
  [
    /^(\d+) lines? left out \(first: line (\d+)\): each (.+)$/,
    (_, count, first, reason) =>
      `${count} ${count === '1' ? 'Zeile' : 'Zeilen'} weggelassen (erste: Zeile ${first}): jede ${skipInGerman(reason)}`,
  ],
  [
    /^(\d+) cells? of column "(.+)" cannot be read(?: \(first: line (\d+), "(.*)"\))?$/,
    (_, count, column, line, example) =>
      `${count} ${count === '1' ? 'Zelle' : 'Zellen'} der Spalte „${column}“ nicht lesbar${line === '' ? '' : ` (erste: Zeile ${line}, „${example}“)`}`,
  ],
  [/^column "(.+)" is empty$/, (_, column) => `Spalte „${column}“ ist leer`],
  [
    /^column "(.+)" read as (.+) in (.+) goes from (.+) to (.+) in SI units, outside (.+) to (.+): check its unit$/,
    (_, column, channel, unit, low, high, least, most) =>
      `Spalte „${column}“, gelesen als ${word(channel)} in ${word(unit)}, geht von ${comma(low)} bis ${comma(high)} in SI-Einheiten, außerhalb von ${comma(least)} bis ${comma(most)}: Einheit prüfen`,
  ],
  [
    /^column "(.+)" was guessed to be ([^,:]+)(?:, ([^:]+))?: (.+)$/,
    (_, column, channel, unit, reasons) =>
      `Spalte „${column}“ wurde geraten als ${word(channel)}${unit === '' ? '' : `, ${word(unit)}`}: ${reasons.split('; ').map(recordingSaidInGerman).join('; ')}`,
  ],
  [
    /^the time was guessed: (.+)$/,
    (_, reasons) => `Die Zeit wurde geraten: ${reasons.split('; ').map(recordingSaidInGerman).join('; ')}`,
  ],
  [
    /^the clock was set (forward|back) by an hour at line (\d+), as for summer time: .+$/,
    (_, direction, line) =>
      `Die Uhr wurde in Zeile ${line} um eine Stunde ${direction === 'forward' ? 'vorgestellt' : 'zurückgestellt'}, wie zur Sommerzeit: die Zeiten danach wurden angeschlossen`,
  ],
  [/^the clock passes midnight at line (\d+)$/, (_, line) => `Die Uhr geht in Zeile ${line} über Mitternacht`],
  [
    /^(\d+) lines repeat a time: .+$/,
    (_, count) => `${count} Zeilen wiederholen eine Zeit: die Uhr ist gröber als die Messwerte; nur der erste gilt`,
  ],
  [
    /^the tank pressure was worked out from the sensor volts and the sensor range of the car$/,
    () => 'Der Tankdruck wurde aus der Sensorspannung und dem Messbereich des Fahrzeugs berechnet',
  ],
  [
    /^the recording has sensor volts and no tank pressure: .+$/,
    () =>
      'Die Aufzeichnung hat die Sensorspannung und keinen Tankdruck: tragen Sie beim Fahrzeug den Messbereich des Sensors ein',
  ],
  // why a column or a time was guessed
  [/^our own column name$/, () => 'unser eigener Spaltenname'],
  [/^our own column name with another unit$/, () => 'unser eigener Spaltenname mit anderer Einheit'],
  [/^words in the header$/, () => 'Worte in der Überschrift'],
  [/^the header is none that is known$/, () => 'die Überschrift ist unbekannt'],
  [/^the header says (.+)$/, (_, what) => `die Überschrift sagt ${what}`],
  [/^the header ends in "(.+)"$/, (_, what) => `die Überschrift endet auf „${what}“`],
  [/^the unit row says (.+)$/, (_, what) => `die Einheitenzeile sagt ${what}`],
  [/^its cells say open or closed$/, () => 'die Zellen sagen offen oder geschlossen'],
  [
    /^on is taken as energised, and an energised vent valve is closed \(common practice\)$/,
    () => 'an gilt als bestromt, und ein bestromtes Belüftungsventil ist geschlossen (übliche Praxis)',
  ],
  [/^cells hold words where numbers are expected$/, () => 'in den Zellen stehen Worte, wo Zahlen erwartet werden'],
  [
    /^but (.+), which is no unit of (.+)$/,
    (_, reason) => `aber ${recordingSaidInGerman(reason)}, was keine passende Einheit ist`,
  ],
  [
    /^looks like (.+), which column "(.+)" already gives$/,
    (_, channel, column) => `sieht aus wie ${word(channel)}, was schon Spalte „${column}“ enthält`,
  ],
  [/^the mapping does not list it$/, () => 'in der Zuordnung nicht genannt'],
  [
    /^numbers from (.+) to (.+) fit ambient pressure in (.+)$/,
    (_, low, high, unit) => `Zahlen von ${comma(low)} bis ${comma(high)} passen zum Luftdruck in ${unit}`,
  ],
  [
    /^numbers from (.+) to (.+) fit kPa at idle$/,
    (_, low, high) => `Zahlen von ${comma(low)} bis ${comma(high)} passen zu kPa im Leerlauf`,
  ],
  [
    /^numbers from (.+) to (.+) fit (.+)$/,
    (_, low, high, unit) =>
      `Zahlen von ${comma(low)} bis ${comma(high)} passen zu ${word(unit)
        .replace('a fraction', 'einem Anteil')
        .replace('percent', 'Prozent')
        .replace('kelvin', 'Kelvin')
        .replace(/ only$/, ' allein')}`,
  ],
  [
    /^numbers from (.+) to (.+) are too (hot|large) for (.+)$/,
    (_, low, high, how, unit) =>
      `Zahlen von ${comma(low)} bis ${comma(high)} sind zu ${how === 'hot' ? 'heiß' : 'groß'} für ${unit}`,
  ],
  [/^no unit is given; (.+)$/, (_, rest) => `keine Einheit genannt; ${noUnit(rest)}`],
  [/^engine speed is written in 1\/min$/, () => 'Drehzahl steht in 1/min'],
  [/^header names time and its unit$/, () => 'Überschrift nennt Zeit und Einheit'],
  [/^header names time$/, () => 'Überschrift nennt die Zeit'],
  [
    /^a count of (milliseconds|seconds) from 1970$/,
    (_, unit) => `zählt ${unit === 'seconds' ? 'Sekunden' : 'Millisekunden'} ab 1970`,
  ],
  [/^cells are dates with clock times$/, () => 'Zellen sind Datum mit Uhrzeit'],
  [/^cells are clock times$/, () => 'Zellen sind Uhrzeiten'],
  [/^a date column beside a clock column$/, () => 'eine Datumsspalte neben einer Uhrzeitspalte'],
];

function noUnit(rest: string): string {
  if (/^trims are/.test(rest)) return 'Gemischkorrekturen stehen in Prozent';
  if (/^km\/h/.test(rest)) return 'km/h angenommen, es könnten mph sein';
  if (/^L\/min/.test(rest)) return 'L/min angenommen';
  if (/^steps fit seconds/.test(rest)) return 'die Schritte passen zu Sekunden';
  const milliseconds = /^steps of (.+) fit milliseconds/.exec(rest);
  if (milliseconds) return `Schritte von ${milliseconds[1]} passen zu Millisekunden`;
  const celsius = /^numbers from (.+) to (.+) are read as °C/.exec(rest);
  if (celsius)
    return `Zahlen von ${comma(celsius[1]!)} bis ${comma(celsius[2]!)} werden als °C gelesen, es könnten °F sein`;
  return rest;
}

const BY_ENGLISH = new Map(
  Object.entries(SKIP_REASONS).map(([key, english]) => [english as string, SKIPS_DE[key as keyof typeof SKIP_REASONS]]),
);
const skipInGerman = (reason: string): string => BY_ENGLISH.get(reason) ?? reason;

export function recordingSaidInGerman(sentence: string): string {
  return BY_ENGLISH.get(sentence) ?? sayWith(ROWS, sentence);
}
