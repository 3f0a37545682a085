/** Was an einer Eingabe nicht stimmt, auf Deutsch. */
import type { Quantity } from '../../units/unit-table.ts';
import { type SaidRow, sayWith } from './said.ts';

const QUANTITIES_DE: Readonly<Record<Quantity, string>> = {
  pressure: 'des Drucks',
  temperature: 'der Temperatur',
  'temperature difference': 'des Temperaturunterschieds',
  length: 'der Länge',
  area: 'der Fläche',
  volume: 'des Volumens',
  mass: 'der Masse',
  time: 'der Zeit',
  'volume flow': 'des Durchflusses',
  'mass flow': 'des Massenstroms',
  density: 'der Dichte',
  speed: 'der Geschwindigkeit',
  'rotational speed': 'der Drehzahl',
  voltage: 'der Spannung',
  resistance: 'des Widerstands',
  fraction: 'eines Anteils',
};
const of = (quantity: string): string => QUANTITIES_DE[quantity as Quantity];

/** What the numbers of one check cannot be together, by the words of `contradictions.ts`. */
const TOGETHER: Readonly<Record<string, string>> = {
  'start and end have opposite signs; a hold ends between its start and zero':
    'Anfang und Ende haben verschiedene Vorzeichen; ein Halten endet zwischen seinem Anfang und null.',
  'is further from zero than the start; vapour is rising or the two are swapped: let it settle and repeat':
    'Liegt weiter von null als der Anfang: Dampf steigt auf, oder die beiden sind vertauscht. Beruhigen lassen und wiederholen.',
  'is too near zero to show a leak; expected at least 500 Pa (2 inH2O)':
    'Zu nah an null, um ein Leck zu zeigen; erwartet mindestens 500 Pa (2 inH2O).',
  'is more vacuum than at the start; are the two swapped?':
    'Mehr Unterdruck als am Anfang; sind die beiden vertauscht?',
  'is too near the first; expected at least 300 Pa (1.2 inH2O) between them':
    'Zu nah am ersten; erwartet mindestens 300 Pa (1,2 inH2O) dazwischen.',
  'is below the dry weight; are the two swapped, or is it another canister’s dry weight?':
    'Unter dem Trockengewicht; sind die beiden vertauscht, oder gehört das Trockengewicht zu einem anderen Aktivkohlebehälter?',
  'is more than the flow with the car connected; are the two swapped?':
    'Mehr als der Durchfluss mit angeschlossenem Fahrzeug; sind die beiden vertauscht?',
  'the three pressures must have one sign and the references must not be zero':
    'Alle drei Drücke brauchen dasselbe Vorzeichen, und die Referenzen dürfen nicht null sein.',
};

const ROWS: readonly SaidRow[] = [
  [
    /^"(.*)" is a unit of (.*); expected a unit of (.*?): (.*)$/,
    (_, found = '', is = '', wanted = '', units = '') =>
      `„${found}“ ist eine Einheit ${of(is)}; erwartet wird eine Einheit ${of(wanted)}: ${units}.`,
  ],
  [
    /^"(.*)" is no unit known here; expected (.*)$/,
    (_, found = '', units = '') => `„${found}“ ist hier keine bekannte Einheit; erwartet: ${units}.`,
  ],
  [
    /^nothing entered, expected a number with its unit \((.*)\)$/,
    (_, unit = '') => `Nichts eingetragen; erwartet wird eine Zahl mit Einheit (${unit}).`,
  ],
  [
    /^found "(.*)", expected (.*) to (.*); is the sign right\? .*$/,
    (_, found = '', least = '', most = '') =>
      `„${found}“ gefunden, erwartet ${least} bis ${most}. Stimmt das Vorzeichen? Unterdruck ist negativ, Überdruck positiv.`,
  ],
  [
    /^found "(.*)", expected (.*) to (.*); is the unit right\?$/,
    (_, found = '', least = '', most = '') => `„${found}“ gefunden, erwartet ${least} bis ${most}. Stimmt die Einheit?`,
  ],
  [/^"(.*)" has no unit; .*$/, (_, found = '') => `„${found}“ hat keine Einheit; hinter der Zahl ergänzen.`],
  [
    /^"(.*)" does not start with a number; .*$/,
    (_, found = '') => `„${found}“ beginnt nicht mit einer Zahl; erwartet werden Zahl und Einheit.`,
  ],
];

export const refusedDe = (sentence: string): string => TOGETHER[sentence] ?? sayWith(ROWS, sentence);
