/**
 * Sentences of the finding and remarks on recordings, which the program makes in English, said again in German. Each
 * sentence of theirs has a pattern here; a test puts every kind of sentence through and finds none left over.
 */
import { CHANNELS_DE } from '../../../readiness/text/channels-de.ts';
import { NBSP } from '../../numbers.ts';
import { recordingSaidInGerman } from '../../recording-said-de.ts';
import { CAUSE_WORDS_DE } from '../../words-de.ts';

/** How the finding's reasons call causes, and their German names. */
const CAUSES: Readonly<Record<string, string>> = {
  'no fault': 'kein Fehler',
  'a leak': CAUSE_WORDS_DE.leak.name,
  'a gross leak (cap or hose off)': CAUSE_WORDS_DE.gross_leak.name,
  'a purge valve that seeps when shut': CAUSE_WORDS_DE.purge_leak.name,
  'a purge valve that stays shut': CAUSE_WORDS_DE.purge_stuck_closed.name,
  'a purge valve that stays open': CAUSE_WORDS_DE.purge_stuck_open.name,
  'a vent valve that does not seal': CAUSE_WORDS_DE.vent_leak.name,
  'a vent valve that stays shut': CAUSE_WORDS_DE.vent_stuck_closed.name,
  'a choked vent path': CAUSE_WORDS_DE.vent_restricted.name,
  'a blocked way from tank to canister': CAUSE_WORDS_DE.path_blocked.name,
  'a fill-limit valve that stays open': CAUSE_WORDS_DE.fill_valve_stuck_open.name,
  'a pressure sensor with a zero error': CAUSE_WORDS_DE.sensor_bias.name,
  'a pressure sensor with a wrong gain': CAUSE_WORDS_DE.sensor_gain.name,
  'a pressure sensor that stands still': CAUSE_WORDS_DE.sensor_stuck.name,
  'a noisy pressure sensor': CAUSE_WORDS_DE.sensor_noisy.name,
  'a canister full of fuel vapour': CAUSE_WORDS_DE.canister_saturated.name,
  'a weak pump': CAUSE_WORDS_DE.pump_weak.name,
  'a pump that does not run': CAUSE_WORDS_DE.pump_dead.name,
  'a dirty reference orifice': CAUSE_WORDS_DE.orifice_dirty.name,
  'a change-over valve that leaks': CAUSE_WORDS_DE.changeover_leak.name,
  'a change-over valve that does not move': CAUSE_WORDS_DE.changeover_stuck.name,
  'a tank isolation valve that leaks': CAUSE_WORDS_DE.isolation_leak.name,
  'a tank isolation valve that stays shut': CAUSE_WORDS_DE.isolation_stuck_shut.name,
};

const PHASES: Readonly<Record<string, string>> = {
  'the time before the draw': 'Die Zeit vor dem Absaugen',
  'the draw': 'Das Absaugen',
  'the seconds after the purge shut': 'Die Sekunden nach dem Schließen des Tankentlüftungsventils',
  'the hold': 'Das Halten',
  'the release': 'Das Belüften',
  'the sealed time': 'Die Zeit im abgeschlossenen Zustand',
  'the vented time': 'Die belüftete Zeit',
  'the time with purge flow': 'Die Zeit mit Spülstrom',
  'the time without purge flow': 'Die Zeit ohne Spülstrom',
  'the filling': 'Das Tanken',
  'the time after the nozzle shut off': 'Die Zeit nach dem Abschalten der Zapfpistole',
  'the run through the reference orifice': 'Der Lauf durch die Referenzblende',
  'the pump on the tank': 'Die Pumpe am Tank',
  'the rest': 'Der Rest',
};

/** What a warning may say is not known. */
const UNKNOWN: Readonly<Record<string, string>> = {
  'barometric pressure': CHANNELS_DE.barometricPa,
  'ambient temperature': CHANNELS_DE.ambientTemperatureK,
  'fuel level': CHANNELS_DE.fuelLevel,
  'tank volume': 'Tankinhalt',
  'manifold pressure': CHANNELS_DE.manifoldAbsPa,
};

const decimals = (words: string): string => words.replace(/(\d)\.(\d)/g, '$1,$2');
const cause = (words: string): string => CAUSES[words] ?? `„${words}“`;
const phase = (words: string): string => PHASES[words.charAt(0).toLowerCase() + words.slice(1)] ?? `„${words}“`;
const odds = (words: string): string => words.replace(/^over /, 'über ').replace(' to ', ' zu ');
const share = (words: string): string => words.replace('under', 'unter');

type Pattern = readonly [english: RegExp, german: (...parts: string[]) => string];
const same = (english: string, german: string): Pattern => [
  new RegExp(`^${english.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`),
  () => german,
];

const FINDING: readonly Pattern[] = [
  [
    /^(The .+) fits (.+) and not (.+) \(odds (.+) from this phase\)\.$/,
    (which, own, other, by) =>
      `${phase(which!)} passt zu „${cause(own!)}“ und nicht zu „${cause(other!)}“ (Chancen ${odds(by!)} aus dieser Phase).`,
  ],
  [
    /^(The .+) would fit (.+) better \(odds (.+) from this phase\)\.$/,
    (which, other, by) =>
      `${phase(which!)} würde besser zu „${cause(other!)}“ passen (Chancen ${odds(by!)} aus dieser Phase).`,
  ],
  [
    /^The fuel trims agree with (.+) \(odds (.+) against (.+)\)\.$/,
    (own, by, other) =>
      `Die Gemischkorrekturen passen zu „${cause(own!)}“ (Chancen ${odds(by!)} gegen „${cause(other!)}“).`,
  ],
  [
    /^The fuel trims speak against (.+) \(odds (.+) against (.+)\)\.$/,
    (own, by, other) =>
      `Die Gemischkorrekturen sprechen gegen „${cause(own!)}“ (Chancen ${odds(by!)} für „${cause(other!)}“).`,
  ],
  [
    /^Not excluded by these recordings: (.+)\.$/,
    (list) =>
      `Durch diese Aufzeichnungen nicht ausgeschlossen: ${list!.replace(/(an? [^,]+?|no fault) \(([^()]*%)\)/g, (_, name: string, part: string) => `${cause(name)} (${share(part)})`)}.`,
  ],
  [
    /^No cause stands out: the first, (.+), has (.+)\.$/,
    (name, part) => `Keine Ursache ragt heraus: die erste, „${cause(name!)}“, hat ${share(part!)}.`,
  ],
  [
    /^The pressure sensor follows about (\d+) s late, where sound ones take a fraction of a second: look at its port, hose and plug before trusting sizes\. Let the engine cool; fuel vapour, no sparks\.$/,
    (seconds) =>
      `Der Drucksensor folgt etwa ${seconds}${NBSP}s zu spät, wo heile einen Bruchteil einer Sekunde brauchen: Anschluss, Schlauch und Stecker ansehen, bevor man Größen traut. Den Motor abkühlen lassen; Kraftstoffdampf, keine Funken.`,
  ],
  same(
    'Pressure alone does not tell where a hole is: cap, neck, hoses, tank top, canister and vent side look alike.',
    'Der Druck allein sagt nicht, wo ein Loch ist: Deckel, Stutzen, Schläuche, Tankoberseite, Aktivkohlebehälter und Belüftungsseite sehen gleich aus.',
  ),
  same(
    'The fuel temperature was not recorded, so the share of evaporation is less certain.',
    'Die Kraftstofftemperatur wurde nicht aufgezeichnet, deshalb ist der Anteil der Verdunstung weniger sicher.',
  ),
  same(
    "A second run of the same test under other conditions (another fuel level, a day with a temperature swing) would confirm it. Follow the service information; a sealed tank can hold pressure, so let it down by the car's own refuel request first.",
    'Ein zweiter Lauf desselben Tests unter anderen Bedingungen (anderer Füllstand, ein Tag mit Temperaturwechsel) würde es bestätigen. Den Herstellerunterlagen folgen; ein abgeschlossener Drucktank kann unter Druck stehen, deshalb zuerst über die Betankungsanforderung des Fahrzeugs entlasten.',
  ),
  same(
    'The same test with the vent hose plugged at the canister parts the vent valve from every other hole. Follow the service information; no sparks near the open hose.',
    'Derselbe Test mit verschlossenem Belüftungsschlauch am Aktivkohlebehälter trennt das Belüftungsventil von jedem anderen Loch. Den Herstellerunterlagen folgen; keine Funken am offenen Schlauch.',
  ),
  same(
    'A hold with the purge line clamped at the canister, or a drive with purge steps and trims recorded, parts the purge valve from the rest. Hot parts: let the engine cool before reaching in.',
    'Ein Halten mit abgeklemmter Spülleitung am Aktivkohlebehälter oder eine Fahrt mit Spülstufen und aufgezeichneten Gemischkorrekturen trennt das Tankentlüftungsventil vom Rest. Heiße Teile: den Motor abkühlen lassen, bevor man hineingreift.',
  ),
  same(
    'Half a minute with cap off and vent open shows the sensor at ambient pressure. Open the cap slowly and let any hiss stop first.',
    'Eine halbe Minute mit Deckel ab und offener Belüftung zeigt den Sensor bei Außendruck. Den Deckel langsam öffnen und jedes Zischen abwarten.',
  ),
  same(
    'A recording while purging with the vent hose off the canister parts vent path, canister and vapour line. Outdoors, away from sparks.',
    'Eine Aufzeichnung beim Spülen mit abgezogenem Belüftungsschlauch am Aktivkohlebehälter trennt Belüftungsweg, Aktivkohlebehälter und Dampfleitung. Im Freien, fern von Funken.',
  ),
  same(
    'The same test with a longer hold (two to three minutes) and the fuel below 35 °C narrows the size across the 0.5 mm mark.',
    'Derselbe Test mit längerem Halten (zwei bis drei Minuten) und Kraftstoff unter 35 °C grenzt die Größe an der 0,5-mm-Marke ein.',
  ),
  same(
    'A second run of the same test at another fuel level would confirm it: a true hole keeps its size while the rates change.',
    'Ein zweiter Lauf desselben Tests bei anderem Füllstand würde es bestätigen: ein wirkliches Loch behält seine Größe, während sich die Geschwindigkeiten ändern.',
  ),
  same(
    'None of the recordings can be used; the warnings say why.',
    'Keine der Aufzeichnungen ist verwendbar; die Hinweise sagen, warum.',
  ),
  same(
    'Record tank pressure with the purge and vent commands through one leak self-test: some seconds with the vent open, the draw, at least a minute of hold, the release.',
    'Den Tankdruck mit den Befehlen für Spülen und Belüften über einen Leck-Selbsttest aufzeichnen: einige Sekunden mit offener Belüftung, das Absaugen, mindestens eine Minute Halten, das Belüften.',
  ),
];

const RUNS: readonly Pattern[] = [
  same(
    'The pump never ran through its reference orifice, so a weak pump and a hole look alike.',
    'Die Pumpe lief nie durch ihre Referenzblende, deshalb sehen eine schwache Pumpe und ein Loch gleich aus.',
  ),
  same(
    'The pump was never turned to the tank, so the tank side is not tested.',
    'Die Pumpe wurde nie auf den Tank geschaltet, die Tankseite ist also nicht geprüft.',
  ),
  [
    /^The pump worked on the tank for (\d+) s only; its pressure had not settled\.$/,
    (s) => `Die Pumpe arbeitete nur ${s} s am Tank; ihr Druck hatte sich noch nicht eingestellt.`,
  ],
  same(
    'Purge was never opened on the pumped tank, so the purge valve is not proven.',
    'Am bepumpten Tank wurde nie gespült, das Tankentlüftungsventil ist also nicht nachgewiesen.',
  ),
  [
    /^The tank stood at (-?\d+) Pa with a temperature swing of ([\d.]+) K: too little to show whether its side is tight\. Record over a night or a warm-up\.$/,
    (pa, k) =>
      `Der Tank stand bei ${pa} Pa mit einem Temperaturwechsel von ${decimals(k!)} K: zu wenig, um zu zeigen, ob seine Seite dicht ist. Über eine Nacht oder ein Warmlaufen aufzeichnen.`,
  ],
  same(
    'The canister side was never shut under vacuum, or its pressure not recorded, so it is not tested.',
    'Die Behälterseite war nie unter Unterdruck verschlossen, oder ihr Druck wurde nicht aufgezeichnet; sie ist also nicht geprüft.',
  ),
  same(
    'The isolation valve was never commanded open, so what it does is unknown.',
    'Das Tankabsperrventil wurde nie geöffnet; was es tut, ist also nicht bekannt.',
  ),
];

const ASSUMED: Readonly<Record<string, string>> = {
  'that of an idling engine is assumed': 'der eines Motors im Leerlauf wird angenommen',
  'sea level is assumed': 'Meereshöhe wird angenommen',
  'the intake air or a mild day stands in': 'die Ansaugluft oder ein milder Tag steht dafür ein',
  'half a tank is assumed and the size is that much less certain':
    'ein halber Tank wird angenommen, und die Größe ist entsprechend weniger sicher',
  '60 L is assumed and the size is that much less certain':
    '60 L werden angenommen, und die Größe ist entsprechend weniger sicher',
};

const VALVES: Readonly<Record<string, string>> = {
  'the vent valve': 'Belüftungsventils',
  'the purge valve': 'Tankentlüftungsventils',
};

const WARNINGS: readonly Pattern[] = [
  [
    /^(.+): (the vent valve|the purge valve)'s command is not recorded; it was taken from the phases$/,
    (label, valve) =>
      `${label}: die Ansteuerung des ${VALVES[valve!]} ist nicht aufgezeichnet; sie wurde den Phasen entnommen`,
  ],
  [
    /^(.+): no channel tells when the vent valve was shut, so it takes no part; give its times in the notes\.$/,
    (label) =>
      `${label}: kein Kanal sagt, wann das Belüftungsventil geschlossen war; zählt deshalb nicht mit. Die Zeiten in den Notizen angeben.`,
  ],
  [
    /^(.+): no channel tells when the purge valve worked, so it takes no part; correct its phases by hand\.$/,
    (label) =>
      `${label}: kein Kanal sagt, wann das Tankentlüftungsventil arbeitete; zählt deshalb nicht mit. Die Phasen von Hand berichtigen.`,
  ],
  [
    /^(.+): pressures such as (\S+) Pa are beyond any vapour system, so it takes no part; check the unit of that column\.$/,
    (label, example) =>
      `${label}: Drücke wie ${decimals(example!)} Pa hat keine Tankentlüftung; zählt deshalb nicht mit. Die Einheit dieser Spalte prüfen.`,
  ],
  [
    /^(.+): readings beyond any vapour system \((\d+), such as (\S+) Pa\) were left out$/,
    (label, count, example) =>
      `${label}: Messwerte, die keine Tankentlüftung hat (${count}, etwa ${decimals(example!)} Pa), wurden weggelassen`,
  ],
  [
    /^(.+): (barometric pressure|ambient temperature|fuel level|tank volume|manifold pressure) is not known; (.+)$/,
    (label, what, assumed) => `${label}: ${UNKNOWN[what!]} nicht bekannt; ${ASSUMED[assumed!] ?? assumed}`,
  ],
  [
    /^(.+): it has no tank pressure, so it takes no part; map the column that holds it\.$/,
    (label) => `${label}: ohne Tankdruck, zählt deshalb nicht mit; die Spalte zuordnen, die ihn enthält.`,
  ],
  [
    /^(.+): it has no pressure that a (.+) can be judged by, so it takes no part\.$/,
    (label) => `${label}: ohne einen Druck, nach dem sich dieser Ablauf beurteilen lässt; zählt deshalb nicht mit.`,
  ],
  [
    /^(.+): fewer than (\d+) pressure readings, too few for a finding\.$/,
    (label, count) => `${label}: weniger als ${count} Druckwerte, zu wenige für einen Befund.`,
  ],
  [
    /^(.+): looks like no known procedure, so it takes no part; name the procedure in the notes if it is one\.$/,
    (label) =>
      `${label}: sieht nach keinem bekannten Ablauf aus, zählt deshalb nicht mit; den Ablauf angeben, wenn es einer ist.`,
  ],
];

const ALL: readonly Pattern[] = [...FINDING, ...RUNS, ...WARNINGS];

/** Put before a sentence that has no German form yet. */
export const UNTRANSLATED = 'Im Wortlaut des Programms:';

export function machineTextInGerman(english: string): string {
  for (const [pattern, german] of ALL) {
    const found = pattern.exec(english);
    if (found !== null) return german(...found.slice(1));
  }
  // Remarks on a recording are worded where its own pages word them.
  const remark = recordingSaidInGerman(english);
  return remark === english ? `${UNTRANSLATED}${NBSP}${english}` : remark;
}
