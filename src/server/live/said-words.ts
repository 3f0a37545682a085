/** What a car said of itself, as a note for the job: figures and codes, with words in the language of the page. */
import { INSPECTION_DE } from '../../readiness/text/de-inspection.ts';
import { INSPECTION_EN } from '../../readiness/text/en-inspection.ts';
import type { MonitorName } from '../../recording/bus/monitor-status.ts';
import { dataItemInGerman } from '../../report/data-items-de.ts';
import type { CaptureFacts } from '../contract/recordings.ts';

interface SaidWords {
  readonly before: (when: string) => string;
  readonly after: (when: string, units: readonly string[]) => string;
  readonly notAnswered: string;
  readonly codes: string;
  readonly none: string;
  readonly status: Readonly<Record<CaptureFacts['codes'][number]['status'], string>>;
  readonly lamp: (isOn: boolean) => string;
  readonly notRun: string;
  readonly monitors: Readonly<Record<MonitorName, string>>;
  readonly warmUps: string;
  readonly distance: string;
  readonly inUse: string;
  readonly freezeFrame: (code: string) => string;
  readonly item: (name: string) => string;
  readonly results: string;
  readonly file: string;
}

const EN: SaidWords = {
  before: (when) => `Before codes were cleared (service $04) on ${when}, the car said:`,
  after: (when, units) =>
    `Codes cleared (service $04) on ${when}; confirmed by control unit ${units.join(', ')}. Permanent codes stay until the monitor has run and passed; every monitor has to run anew before an inspection.`,
  notAnswered: 'Service $04 was sent; no control unit confirmed it. The codes may still be there.',
  codes: 'Codes',
  none: 'none',
  status: { confirmed: 'stored', pending: 'pending', permanent: 'permanent' },
  lamp: (isOn) => (isOn ? 'Lamp commanded on' : 'Lamp not commanded'),
  notRun: 'Monitors not run',
  monitors: INSPECTION_EN.monitors,
  warmUps: 'Warm-ups since clear',
  distance: 'Distance since clear',
  inUse: 'In-use counters',
  freezeFrame: (code) => `Freeze frame ${code}`,
  item: (name) => name,
  results: 'Test results (service $06)',
  file: 'Everything that was said on the bus until then stands among the files.',
};

const DE: SaidWords = {
  before: (when) => `Vor dem Löschen der Codes (Dienst $04) am ${when} sagte das Fahrzeug:`,
  after: (when, units) =>
    `Codes gelöscht (Dienst $04) am ${when}; bestätigt von Steuergerät ${units.join(', ')}. Permanente Codes bleiben, bis die Eigendiagnose gelaufen ist und bestanden hat; vor einer Prüfung muss jede Eigendiagnose neu laufen.`,
  notAnswered: 'Dienst $04 wurde gesendet; kein Steuergerät hat bestätigt. Die Codes können noch da sein.',
  codes: 'Codes',
  none: 'keine',
  status: { confirmed: 'gespeichert', pending: 'vorläufig', permanent: 'permanent' },
  lamp: (isOn) => (isOn ? 'Lampe eingeschaltet' : 'Lampe nicht eingeschaltet'),
  notRun: 'Nicht gelaufene Eigendiagnosen',
  monitors: INSPECTION_DE.monitors,
  warmUps: 'Warmläufe seit dem Löschen',
  distance: 'Strecke seit dem Löschen',
  inUse: 'Zähler im Betrieb',
  freezeFrame: (code) => `Umgebungsdaten ${code}`,
  item: dataItemInGerman,
  results: 'Prüfergebnisse (Dienst $06)',
  file: 'Alles, was bis dahin auf dem Bus gesagt wurde, liegt bei den Dateien.',
};

const WORDS = { en: EN, de: DE } as const;
export type NoteLanguage = keyof typeof WORDS;

const figure = (value: number): string => String(Number(value.toPrecision(6)));

export function beforeClearing(
  { codes, freezeFrames, status, results }: CaptureFacts,
  when: string,
  language: NoteLanguage,
): string {
  const words = WORDS[language];
  const list = (items: readonly string[]): string => (items.length === 0 ? words.none : items.join(', '));
  const { sinceClear, warmUpsSinceClear, distanceSinceClearM, inUse } = status;
  const notRun = sinceClear?.monitors.filter(({ supported, complete }) => supported && !complete) ?? [];
  const lines = [
    words.before(when),
    `${words.codes}: ${list(codes.map(({ code, status: how, unit }) => `${code} ${words.status[how]} (${unit})`))}`,
    ...(sinceClear?.lampOn === undefined ? [] : [words.lamp(sinceClear.lampOn)]),
    ...(sinceClear === undefined ? [] : [`${words.notRun}: ${list(notRun.map(({ name }) => words.monitors[name]))}`]),
    ...(warmUpsSinceClear === undefined ? [] : [`${words.warmUps}: ${warmUpsSinceClear}`]),
    ...(distanceSinceClearM === undefined ? [] : [`${words.distance}: ${distanceSinceClearM / 1000} km`]),
    ...(inUse === undefined
      ? []
      : [
          `${words.inUse}: ${Object.entries(inUse)
            .map(([name, count]) => `${name} ${count}`)
            .join(', ')}`,
        ]),
    ...freezeFrames.map(
      ({ code, number, items }) =>
        `${words.freezeFrame(code ?? String(number))}: ${items.map(({ name, value, unit }) => `${words.item(name)} ${figure(value)} ${unit}`).join(', ')}`,
    ),
    ...(results.length === 0
      ? []
      : [
          `${words.results}: ${results
            .map(
              (r) =>
                `$${r.monitorId.toString(16).toUpperCase()}/$${r.testId.toString(16).toUpperCase()} ${figure(r.value)} (${figure(r.lowest)} … ${figure(r.highest)}) ${r.unit}`,
            )
            .join('; ')}`,
        ]),
    words.file,
  ];
  return lines.join('\n');
}

export const afterClearing = (units: readonly string[], when: string, language: NoteLanguage): string =>
  units.length === 0 ? WORDS[language].notAnswered : WORDS[language].after(when, units);
