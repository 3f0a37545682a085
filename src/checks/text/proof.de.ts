/** Der Nachweis auf Deutsch. */
import type { ProofText } from './text.ts';

export const PROOF_DE: ProofText = {
  verdict: {
    held: 'Die Reparatur hat gehalten.',
    'not-held': 'Die Reparatur hat nicht gehalten.',
    'not-proven': 'Nicht nachgewiesen: Ob die Reparatur hält, lässt sich noch nicht sagen.',
  },
  figures: {
    fault: (before, after) =>
      `Wahrscheinlichkeit des reparierten Fehlers: ${before} vor der Reparatur, ${after} danach.`,
    limitMet: (percent, limit) => `Was bleibt, ist mit einer Wahrscheinlichkeit von ${percent} kleiner als ${limit}.`,
    madeDifference: (percent) => `Die Reparatur hat mit einer Wahrscheinlichkeit von ${percent} etwas bewirkt.`,
    anotherLeak: (percent) => `Ein weiteres Leck bleibt mit einer Wahrscheinlichkeit von ${percent}.`,
  },
  against: {
    'self-test failed': 'Der Selbsttest des Fahrzeugs ist seit der Reparatur gelaufen und wurde nicht bestanden.',
    'limit exceeded': (percent, limit) =>
      `Was bleibt, ist größer als der Grenzwert von ${limit}: Dass er eingehalten ist, hat nur eine Wahrscheinlichkeit von ${percent}.`,
    'no difference': (percent) =>
      `Was bleibt, ist so groß wie vorher: Dass die Reparatur etwas bewirkt hat, hat nur eine Wahrscheinlichkeit von ${percent}.`,
    'fault still there': (percent) =>
      `Der reparierte Fehler ist mit einer Wahrscheinlichkeit von ${percent} noch vorhanden.`,
  },
  missing: {
    'no measurement before': 'Vor der Reparatur wurde nicht gemessen; es gibt nichts, womit sich vergleichen ließe.',
    'no measurement after': 'Seit der Reparatur wurde nicht gemessen.',
    'limit not certain': (percent, limit) =>
      `Dass der Grenzwert von ${limit} eingehalten ist: Wahrscheinlichkeit ${percent}, verlangt sind 95 % (Einschätzung). Länger oder noch einmal messen.`,
    'difference not certain': (percent) =>
      `Dass die Reparatur etwas bewirkt hat: Wahrscheinlichkeit ${percent}, verlangt sind 95 % (Einschätzung).`,
    'another leak not excluded': (percent) =>
      `Dass kein weiteres Leck bleibt: Es bleibt eines mit einer Wahrscheinlichkeit von ${percent}, höchstens 10 % gelten als genug (Einschätzung).`,
    'fault not certain before': (percent) =>
      `Dass die Reparatur etwas bewirkt hat: Vor ihr hatte der Fehler nur eine Wahrscheinlichkeit von ${percent}.`,
    'fault not certainly gone': (percent) =>
      `Dass der reparierte Fehler weg ist: Er bleibt mit einer Wahrscheinlichkeit von ${percent}, höchstens 5 % gelten als genug (Einschätzung).`,
    'conditions differ': (which) =>
      `Dass sich beide Messungen vergleichen lassen; verschieden war: ${which}. Den Test so wiederholen wie vorher.`,
    'conditions not known': (which) =>
      `Ob beide Male gleich gemessen wurde; nicht auf beiden Seiten festgehalten: ${which}.`,
    'self-test not run': 'Der Selbsttest des Fahrzeugs ist seit der Reparatur nicht gelaufen.',
    'causes not covered': (causes) => `Was vor der Reparatur möglich war und dieser Nachweis nicht abdeckt: ${causes}.`,
  },
  conditions: {
    method: 'Art der Prüfung',
    'fuel temperature': 'Kraftstofftemperatur',
    'ambient temperature': 'Außentemperatur',
    'fuel level': 'Füllstand',
    volatility: 'Flüchtigkeit des Kraftstoffs',
  },
  values: (before, after) => `${before} vorher, ${after} nachher`,
  alike: { yes: 'gleich', no: 'verschieden', unknown: 'nicht bekannt' },
  sameFill: 'gleich: dazwischen wurde nicht getankt',
  selfTest: { 'not run': 'ist nicht gelaufen', passed: 'gelaufen und bestanden', failed: 'gelaufen, nicht bestanden' },
  allCovered: 'Alle vor der Reparatur vermuteten Ursachen sind abgedeckt.',
  budget: {
    title: 'Leckbilanz',
    lead: 'Löcher nebeneinander addieren sich nach Fläche; abgezogen werden deshalb Flächen, nicht Durchmesser.',
    where: 'wo',
    whole: 'ganzes System',
    sum: 'Abschnitte zusammen',
    removed: 'behoben',
    repaired: (size) => `Das reparierte Leck für sich, aus der Abschnittsprüfung: ${size}.`,
    expectedRest: (size) => `Gesamtes vorher minus repariertes Leck lässt ${size} übrig.`,
    rest: {
      'as expected': 'Was nachher gemessen wurde, passt dazu.',
      'more than expected':
        'Nachher wurde mehr gemessen: nach einem Leck suchen, das die Reparatur übrig ließ oder verursachte.',
      'less than expected':
        'Nachher wurde weniger gemessen: Die Reparatur hat mehr behoben, als die Abschnittsprüfung zeigte.',
    },
  },
};
