import type { CauseId, Finding } from '../../diagnosis/finding.ts';
import { machineTextInGerman } from '../../report/hand-over/words/machine-de.ts';
import { CAUSE_WORDS, firstCause } from '../../report/words.ts';
import {
  CAUSE_WORDS_DE,
  evidenceInGerman,
  limitSourceInGerman,
  OWNER_WORDS_DE,
  SIZE_NOTES_DE,
} from '../../report/words-de.ts';
import type { FINDING_EN } from './finding.en.ts';
import { type SaidRow, sayWith } from './said.ts';

/** From here on a finding is spoken without reserve; the number always stands beside it. */
const SURE = 0.8;

function ownerInGerman(finding: Finding): string {
  const first = firstCause(finding);
  if (finding.verdict === 'cannot-tell' || first === null) return OWNER_WORDS_DE.couldNotTell;
  if (finding.verdict === 'no-fault-seen')
    return first.probability >= SURE ? OWNER_WORDS_DE.noFaultSeen : OWNER_WORDS_DE.noFaultButSmall;
  return OWNER_WORDS_DE.foundFault(first.probability, CAUSE_WORDS_DE[first.id].plain);
}

const CAUSE_BY_ENGLISH = new Map(
  (Object.keys(CAUSE_WORDS) as CauseId[]).map((id) => [CAUSE_WORDS[id].name, CAUSE_WORDS_DE[id].name]),
);

const RUNS_DE: Readonly<Record<string, string>> = { 'pump-run': 'Pumpentest', 'sealed-hold': 'Halten des Drucktanks' };

/** What the making of a finding says of its progress. */
const PROGRESS: readonly SaidRow[] = [
  [/^trying: (.+)$/, (_, name) => `erprobt: ${CAUSE_BY_ENGLISH.get(name ?? '') ?? name}`],
  [/^refining$/, () => 'die besten werden genauer gerechnet'],
  [/^weighing a (.+)$/, (_, kind) => `wird abgewogen: ${RUNS_DE[kind ?? ''] ?? kind}`],
  [/^sizing the hole$/, () => 'die Größe des Lochs wird bestimmt'],
  [/^done$/, () => 'fertig'],
  [/^waiting.*$/, () => 'wartet'],
  [/^reading (.+)$/, (_, name) => `${name} wird gelesen`],
  [/^reading$/, () => 'die Aufzeichnungen werden gelesen'],
  [/^starting$/, () => 'beginnt'],
  [/^$/, () => ''],
];

export const FINDING_DE: typeof FINDING_EN = {
  needsRecording: 'Ein Befund braucht eine Aufzeichnung: legen Sie oben eine ab.',
  needsUsed: 'Keine Aufzeichnung zählt für den Befund: haken Sie oben eine an.',
  needsCar: 'Ein Befund braucht die Bauart des Fahrzeugs: wählen Sie sie oben. Alles andere darf offen bleiben.',
  none: 'Noch kein Befund.',
  make: 'Befund erstellen',
  again: 'Neu erstellen',
  outdated:
    'Überholt: Aufzeichnungen, Fahrzeug, Beanstandung, Codes oder Prüfungen haben sich seither geändert, oder das Programm.',
  outdatedShort: 'überholt',
  running: 'Der Befund wird erstellt',
  waiting: 'Der Befund wartet, bis er dran ist',
  cancel: 'Befund abbrechen',
  cancelled: 'Der Befund wurde abgebrochen. Nichts wurde geändert.',
  interrupted: 'Der Befund wurde unterbrochen',
  interruptedWords: 'Das Programm endete, während er erstellt wurde. Nichts davon blieb; der Auftrag ist, wie er war.',
  startAgain: 'Noch einmal beginnen',
  putAside: 'Lassen',
  failed: 'Der Befund ließ sich nicht erstellen',
  older: 'Befunde dieses Auftrags',
  madeAt: (when) => `erstellt ${when}`,
  newest: 'neuester',
  madeFrom: (count, program) =>
    `${count === 1 ? 'Aus einer Aufzeichnung' : `Aus ${count} Aufzeichnungen zusammen`}, mit ${program}`,
  owner: ownerInGerman,
  sentence: {
    cannotTell: 'Aus diesen Aufzeichnungen nicht zu sagen.',
    cannotTellBecause: (why) => `Aus diesen Aufzeichnungen nicht zu sagen. ${why}`,
    noFault: (isSure, percent) =>
      isSure
        ? `Kein Fehler zu sehen (${percent}).`
        : `Kein Fehler zu sehen, ein kleiner oder verborgener ist aber nicht ausgeschlossen (${percent}).`,
    bound: (size) => `Jedes Loch ist mit 95 % Wahrscheinlichkeit kleiner als ${size}.`,
    at: (isOneOfSeveral) => (isOneOfSeveral ? 'am wahrscheinlichsten:' : 'Ort:'),
    probability: (percent, certainty) => `Wahrscheinlichkeit ${percent}, ${certainty}.`,
    rival: (name, percent) => `Fast ebenso gut: ${name} (${percent}).`,
  },
  or: 'oder',
  causes: {
    title: 'Was es sein könnte',
    rest: (count) => `alles andere (${count} Ursachen)`,
    pairs: 'Zwei Fehler zugleich',
    pair: (a, b) => `${a}, zusammen mit ${b}`,
    alike: (places) => `${places}: in diesen Aufzeichnungen nicht zu unterscheiden`,
    placesOf: (cause) => `Wo der Fehler sitzt: ${cause}`,
    none: 'Keine Ursache ließ sich abwägen.',
  },
  size: {
    title: 'Wie groß ist das Loch',
    label: (interval, limits) =>
      `Gleichwertiger Durchmesser ${interval}, 90-%-Intervall, auf einer logarithmischen Skala. Grenzen: ${limits}.`,
    over: (limit, percent) => `Über ${limit} mit Wahrscheinlichkeit ${percent}.`,
    convention:
      'Gleichwertiger Durchmesser: das dünne, scharfkantige, runde Loch mit Durchflusszahl 0,61, das denselben Strom durchlässt. Löcher addieren sich nach Fläche: dies ist die Summe aller.',
    limitSource: (label, source) => `${label}: ${limitSourceInGerman(source)}.`,
    fromMemory: 'aus dem Gedächtnis',
    unknown: 'Diese Aufzeichnungen bestimmen keine Lochgröße.',
    bound: 'Kein Loch war zu sehen; der Balken zeigt, was sich in diesen Aufzeichnungen verbergen könnte.',
    notes: SIZE_NOTES_DE,
  },
  trace: {
    title: 'Aufgezeichnet und berechnet',
    recording: 'Aufzeichnung',
    cause: 'Berechnet mit',
    rival: 'Vergleichen mit (gestrichelt)',
    noRival: 'nichts',
    recorded: 'aufgezeichnet',
    modelled: 'berechnet',
    rivalName: (name) => `berechnet: ${name}`,
    band: '90-%-Band, halb',
    difference: 'aufgezeichnet minus berechnet',
    pressures: { 'tank pressure': 'Tankdruck', 'pump pressure': 'Pumpendruck' },
    label: (recording, cause) => `${recording}, aufgezeichnet und berechnet mit ${cause}`,
    key: 'Punkte: aufgezeichnet. Linie: berechnet, mit ihrem 90-%-Band. Darunter: aufgezeichnet minus berechnet; wo die Aufzeichnung das Band über mehrere Werte verlässt, ist die Spur getönt und am Fuß markiert.',
    fit: (cause, rms) => `Mit „${cause}“ weicht das Modell um ${rms} von der Aufzeichnung ab (quadratisches Mittel).`,
    inside: 'Die Aufzeichnung bleibt durchweg im Band, von einzelnen Werten abgesehen.',
    parts: (spans) => `Sie gehen auseinander ${spans}.`,
    span: (from, to, phase, by, isAbove) =>
      `von ${from} bis ${to} (${phase}; die Aufzeichnung liegt bis zu ${by} ${isAbove ? 'darüber' : 'darunter'})`,
    more: (count) => `und noch ${count} Mal`,
    none: 'Es gibt keinen berechneten Verlauf, der sich über die Aufzeichnung legen ließe.',
    loading: 'Die Verläufe werden gezeichnet …',
    purge: 'Tastverhältnis Spülung',
    vent: 'Belüftungsventil',
  },
  evidence: {
    title: 'Was jede Phase sagt',
    words: (first, rival) => `Für „${first}“ und gegen den besten Rivalen, „${rival}“.`,
    alone: (first) => `Für oder gegen „${first}“.`,
    silent:
      'Keine Phase für sich trennt die erste Ursache vom besten Rivalen; was sie trennt, steht oben oder in dem, was üblich ist.',
    strength: evidenceInGerman,
    odds: (odds) => `Chancen ${odds}`,
    over: (odds) => `über ${odds}`,
    ratio: (ratio, isFor) => (isFor ? `${ratio} zu 1` : `1 zu ${ratio}`),
    inRecording: (phase, recording) => `${phase}, ${recording}`,
  },
  reasons: {
    for: 'Spricht dafür',
    against: 'Spricht dagegen',
    notProven: 'Was nicht bewiesen ist',
    next: 'Was als Nächstes aufzuzeichnen ist',
    warnings: 'Was angenommen oder weggelassen wurde',
    whichPlace: (places) => `Was davon es ist: ${places}. In diesen Aufzeichnungen sehen sie gleich aus.`,
    rival: (name, percent) => `Nicht ausgeschlossen: ${name} (${percent}).`,
    repair: 'Dass eine Reparatur hält: dieselbe Aufzeichnung danach wiederholen und vergleichen.',
    several: 'Ob es ein Loch ist oder mehrere: die Größe ist die Summe, und Löcher addieren sich nach Fläche.',
    asleep:
      'Alles, was während der Aufzeichnung nicht geschah: ein Fehler, der mit Wärme, Bewegung oder vollem Tank kommt, kann schlafen.',
  },
  said: (sentence) => {
    const progress = sayWith(PROGRESS, sentence);
    return progress === sentence ? machineTextInGerman(sentence) : progress;
  },
};
