/**
 * Die Fachwörter auf Deutsch, jedes an genau einer Stelle: Seiten, Befund und Übergabe nehmen sie von hier. `GLOSSARY_DE` nennt zu
 * jedem gewählten Wort die, die nicht danebenstehen sollen; ein Test sieht alle deutschen Texte danach durch.
 */
import type { CauseId, Place } from '../diagnosis/finding.ts';
import type { PhaseKind, ProcedureKind } from '../recording/recording.ts';
import type { LayoutId } from '../system/car.ts';
import type { CauseWords, ComplaintId } from './words.ts';
import { saysNothing } from './words.ts';

export const GLOSSARY_DE: readonly { readonly word: string; readonly not: RegExp }[] = [
  { word: 'Tankentlüftungsventil', not: /Spülventil|Regenerierventil/ },
  { word: 'Spülleitung', not: /Regenerierleitung|Spülschlauch|Tankentlüftungsleitung/ },
  { word: 'Spülung', not: /Regenerier/ },
  { word: 'Aktivkohlebehälter', not: /Aktivkohlefilter|Kohlefilter/ },
  { word: 'Tankentlüftung', not: /Kraftstoffdampf-System/ },
  { word: 'Überrollventil', not: /Überschlagventil/ },
  { word: 'Referenzblende', not: /Vergleichsblende/ },
  { word: 'abgeschlossener Drucktank', not: /\b(?:ver|ge)schlossene[rnms]? Tank\b/i },
  { word: 'Betankungsanforderung', not: /Tankanforderung/ },
  { word: 'Selbsttest', not: /Eigenprüfung|Eigentest/ },
  { word: 'Fahrzeug', not: /\bWagens?\b/ },
  { word: 'Herstellerunterlagen', not: /Fahrzeugunterlagen|Unterlagen des Fahrzeugs/ },
  { word: 'Außentemperatur', not: /Umgebungstemperatur/ },
  { word: 'Durchflusszahl', not: /Durchflussbeiwert/ },
  { word: '90-%-Intervall', not: /90-%-Bereich/ },
  { word: 'übliche Praxis', not: /gängige Praxis/ },
];

export const CAUSE_WORDS_DE: Readonly<Record<CauseId, CauseWords>> = {
  none: { name: 'kein Fehler zu sehen', plain: 'nichts, was diese Aufzeichnung zeigen könnte, ist fehlerhaft' },
  leak: { name: 'Leck ins Freie', plain: 'ein kleines Loch oder eine schlechte Dichtung in der Tankentlüftung' },
  gross_leak: {
    name: 'große Öffnung (Deckel oder Schlauch ab)',
    plain: 'eine große Öffnung in der Tankentlüftung, etwa ein fehlender Deckel oder ein abgegangener Schlauch',
  },
  purge_leak: {
    name: 'Tankentlüftungsventil schließt nicht dicht',
    plain: 'das Ventil, das Kraftstoffdampf zum Motor leitet, schließt nicht ganz',
  },
  purge_stuck_closed: {
    name: 'Tankentlüftungsventil öffnet nicht',
    plain: 'das Ventil, das Kraftstoffdampf zum Motor leitet, öffnet nicht',
  },
  purge_stuck_open: {
    name: 'Tankentlüftungsventil klemmt offen',
    plain: 'das Ventil, das Kraftstoffdampf zum Motor leitet, bleibt offen',
  },
  vent_leak: {
    name: 'Belüftungsventil dichtet nicht',
    plain: 'das Ventil, das die Tankentlüftung für den Selbsttest verschließen soll, dichtet nicht',
  },
  vent_stuck_closed: {
    name: 'Belüftungsventil klemmt geschlossen',
    plain: 'das Frischluftventil der Tankentlüftung bleibt geschlossen',
  },
  vent_restricted: {
    name: 'Belüftungsweg verengt',
    plain: 'der Frischluftweg der Tankentlüftung ist teilweise verstopft',
  },
  path_blocked: {
    name: 'Dampfweg aus dem Tank verstopft',
    plain: 'der Weg, auf dem Dampf den Tank verlässt, ist verstopft',
  },
  fill_valve_stuck_open: {
    name: 'Füllbegrenzungsventil klemmt offen',
    plain: 'das Ventil im Tank, das das Tanken beendet, bleibt offen',
  },
  sensor_bias: {
    name: 'Tankdrucksensor: Nullpunkt verschoben',
    plain: 'der Tankdrucksensor zeigt um einen festen Betrag falsch an',
  },
  sensor_gain: {
    name: 'Tankdrucksensor: Kennlinie falsch',
    plain: 'der Tankdrucksensor zeigt zu viel oder zu wenig an',
  },
  sensor_stuck: { name: 'Tankdrucksensor hängt', plain: 'der Tankdrucksensor bewegt sich nicht' },
  sensor_noisy: {
    name: 'Tankdrucksensor rauscht',
    plain: 'der Tankdrucksensor oder seine Leitung liefert ein unruhiges Signal',
  },
  canister_saturated: {
    name: 'Aktivkohlebehälter voll Kraftstoffdampf',
    plain: 'der Aktivkohlebehälter enthält mehr Kraftstoffdampf, als er sollte',
  },
  pump_weak: {
    name: 'Leckprüfpumpe zu schwach',
    plain: 'die kleine Pumpe, die das System auf Lecks prüft, ist zu schwach',
  },
  pump_dead: {
    name: 'Leckprüfpumpe läuft nicht',
    plain: 'die kleine Pumpe, die das System auf Lecks prüft, läuft nicht',
  },
  orifice_dirty: {
    name: 'Referenzblende verschmutzt',
    plain: 'die Messblende der Leckprüfpumpe ist teilweise verstopft, ihr Vergleich stimmt nicht',
  },
  changeover_leak: {
    name: 'Umschaltventil undicht',
    plain: 'das Ventil, das die Leckprüfpumpe auf den Tank schaltet, dichtet nicht',
  },
  changeover_stuck: {
    name: 'Umschaltventil schaltet nicht',
    plain: 'das Ventil, das die Leckprüfpumpe auf den Tank schaltet, bewegt sich nicht',
  },
  isolation_leak: {
    name: 'Tankabsperrventil undicht',
    plain: 'das Ventil, das den Tank verschlossen hält, dichtet nicht',
  },
  isolation_stuck_shut: {
    name: 'Tankabsperrventil öffnet nicht',
    plain: 'das Ventil, das den Tank verschlossen hält, öffnet nicht',
  },
};

export const PLACE_WORDS_DE: Readonly<Record<Place, string>> = {
  'cap and neck': 'Tankdeckel und Einfüllstutzen',
  'tank top': 'Tankoberseite',
  'vapour line': 'Dampfleitung',
  canister: 'Aktivkohlebehälter',
  'vent side': 'Belüftungsseite',
  'purge line': 'Spülleitung',
  'purge valve': 'Tankentlüftungsventil',
  'vent valve': 'Belüftungsventil',
  'tank to canister': 'Tank bis Aktivkohlebehälter',
  'fill-limit valve': 'Füllbegrenzungsventil',
  'pressure sensor': 'Drucksensor',
  'pump module': 'Pumpenmodul',
  'isolation valve': 'Tankabsperrventil',
};

export const PHASE_WORDS_DE: Readonly<Record<PhaseKind, string>> = {
  baseline: 'vorher',
  draw: 'Absaugen',
  settle: 'Beruhigen',
  hold: 'Halten',
  release: 'Belüften',
  sealed: 'abgeschlossen',
  vented: 'belüftet',
  purge: 'Spülen',
  idle: 'ohne Spülen',
  filling: 'Tanken',
  filled: 'Abschalten',
  reference: 'Referenz',
  'tank-pump': 'Pumpe am Tank',
  rest: 'Sonstiges',
};

export const PROCEDURE_WORDS_DE: Readonly<Record<ProcedureKind | 'unknown', string>> = {
  'vacuum-draw': 'Leckselbsttest bei laufendem Motor (Absaugen)',
  'engine-off': 'Unterdrucktest bei stehendem Motor',
  'purge-drive': 'Fahrt mit Spülung',
  refuelling: 'Tanken',
  'pump-run': 'Pumpentest mit Referenzblende',
  'sealed-hold': 'Halten des abgeschlossenen Drucktanks',
  unknown: 'Ablauf nicht erkannt',
};

export const LAYOUT_NAMES_DE: Readonly<Record<LayoutId, string>> = {
  'engine-vacuum': 'Unterdruck vom Motor',
  'engine-off': 'Unterdruck bei stehendem Motor',
  'pump-reference': 'Pumpe mit Referenzblende',
  'sealed-tank': 'Abgeschlossener Drucktank',
  'saddle-tank': 'Satteltank',
  'two-path-purge': 'Zwei Spülwege',
};

export const COMPLAINT_WORDS_DE: Readonly<Record<ComplaintId, string>> = {
  'slow fill': 'Zapfpistole schaltet ab, tankt langsam',
  'rough after fill': 'Läuft rau oder startet schlecht nach dem Tanken',
  smell: 'Kraftstoffgeruch',
  'not ready': 'Prüfbereitschaft Tankentlüftung nicht gesetzt',
  'hiss or collapse': 'Tank zischt stark, beult ein oder macht Geräusche',
};

export const CODE_STATUS_DE = { stored: 'gespeichert', pending: 'vorläufig', permanent: 'permanent' } as const;

export function certaintyInGerman(probability: number): string {
  if (probability >= 0.95) return 'so gut wie sicher';
  if (probability >= 0.8) return 'sehr wahrscheinlich';
  if (probability >= 0.6) return 'wahrscheinlich';
  if (probability >= 0.4) return 'etwa so wahrscheinlich wie nicht';
  if (probability >= 0.15) return 'möglich';
  if (probability >= 0.03) return 'unwahrscheinlich';
  return 'sehr unwahrscheinlich';
}

/** Natürlicher Logarithmus des Verhältnisses gegen die beste andere Ursache. */
export function evidenceInGerman(logEvidence: number): string {
  if (saysNothing(logEvidence)) return 'sagt weder dies noch das';
  const side = logEvidence > 0 ? 'dafür' : 'dagegen';
  const strength = Math.abs(logEvidence);
  return `${strength < 2 ? 'schwach' : strength < 5 ? 'deutlich' : 'stark'} ${side}`;
}

/** Wie ein Befund dem Halter gesagt wird. */
export const OWNER_WORDS_DE = {
  couldNotTell: 'Diese Messung sagt nicht, was fehlt; vor dem Tausch von Teilen braucht es eine weitere.',
  noFaultSeen: 'Die Tankentlüftung verhielt sich in dieser Messung wie eine gesunde.',
  noFaultButSmall: 'Diese Messung zeigte keinen Fehler, schließt aber einen kleinen nicht aus.',
  foundFault: (probability: number, plain: string): string => {
    const lead =
      probability >= 0.95
        ? 'So gut wie sicher'
        : probability >= 0.8
          ? 'Sehr wahrscheinlich'
          : probability >= 0.6
            ? 'Am wahrscheinlichsten'
            : 'Die beste Erklärung bisher';
    return `${lead}: ${plain}.`;
  },
} as const;

/** Warum die gezeichnete Größe eine andere ist als die im Satz des Befunds. */
export const SIZE_NOTES_DE = {
  beside: (cause: string): string =>
    `Das ist, was neben „${cause}“ ins Freie offen sein kann; dieser Fehler selbst ist kein Loch ins Freie und hat hier keine Größe.`,
  weighed: (cause: string, own: string): string =>
    `Ist es „${cause}“, beträgt dessen eigene Größe ${own}. Die gezeichnete ist über alle Ursachen gewichtet, auch über die ohne ein solches Loch.`,
} as const;

/** Woher die mitgelieferten Vergleichsgrößen kommen, nach ihrem englischen Wortlaut in `limits.ts`. */
const LIMIT_SOURCES_DE: Readonly<Record<string, string>> = {
  'size of a leak monitor (0.508 mm exactly), 13 CCR 1968.2(e)(4.2.2); federal threshold from memory':
    'Größe einer Lecküberwachung (genau 0,508 mm), 13 CCR 1968.2(e)(4.2.2); US-Bundesgrenze aus dem Gedächtnis',
  'size of a leak monitor (1.016 mm exactly), 13 CCR 1968.2(e)(4.2.2); federal threshold from memory':
    'Größe einer Lecküberwachung (genau 1,016 mm), 13 CCR 1968.2(e)(4.2.2); US-Bundesgrenze aus dem Gedächtnis',
};

/** Woher eine Vergleichsgröße kommt; was der Betrieb selbst schrieb, bleibt stehen. */
export const limitSourceInGerman = (source: string): string => LIMIT_SOURCES_DE[source] ?? source;
