/** Was an einer Eingabe nicht stimmt, auf Deutsch. */
import { type SaidRow, sayWith } from './said.ts';

const ROWS: readonly SaidRow[] = [
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

export const refusedDe = (sentence: string): string => sayWith(ROWS, sentence);
