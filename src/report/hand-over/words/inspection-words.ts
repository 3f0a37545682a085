/** Words of the inspection slip around those of the readiness room. */
import { READINESS_DE } from '../../../readiness/text/de.ts';
import { READINESS_EN } from '../../../readiness/text/en.ts';
import type { ReadinessWords } from '../../../readiness/text/readiness-words.ts';
import type { HandOverLanguage } from '../hand-over.ts';

export interface InspectionSlipWords {
  readonly title: string;
  readonly subtitle: (car: string, date: string) => string;
  readonly sections: Readonly<Record<'said' | 'rule' | 'codes' | 'plan', string>>;
  readonly notRead: string;
  readonly readAt: string;
  readonly from: string;
  readonly capture: (file: string) => string;
  readonly byHand: string;
  readonly item: string;
  readonly noModelYear: string;
  readonly noCodes: string;
  readonly inspectionAt: (date: string) => string;
  readonly columns: Readonly<Record<'start' | 'parked' | 'air' | 'chance' | 'byThen', string>>;
  readonly zone: (name: string) => string;
  readonly pattern: string;
  readonly avoid: string;
  readonly readiness: ReadinessWords;
}

export const INSPECTION_SLIP_WORDS: Readonly<Record<HandOverLanguage, InspectionSlipWords>> = {
  en: {
    title: 'Inspection slip',
    subtitle: (car, date) => `${car}. What the car says of itself, and what follows for an inspection. ${date}`,
    sections: {
      said: 'What the car says',
      rule: 'By the rule',
      codes: 'Codes',
      plan: 'So that the monitor runs',
    },
    notRead: 'The car was not asked for its monitors.',
    readAt: 'Read on',
    from: 'From',
    capture: (file) => `bus capture ${file}`,
    byHand: 'entered by hand',
    item: 'What',
    noModelYear: 'The model year is not known: by it goes how many monitors may be open.',
    noCodes: 'No code was read.',
    inspectionAt: (date) => `Inspection on ${date}.`,
    columns: { start: 'Start', parked: 'Parked before', air: 'Air', chance: 'Chance', byThen: 'By then' },
    zone: (name) => `Times of the place: ${name}.`,
    pattern: 'How to drive',
    avoid: 'What to avoid',
    readiness: READINESS_EN,
  },
  de: {
    title: 'Blatt zur Abgasprüfung',
    subtitle: (car, date) => `${car}. Was das Fahrzeug selbst meldet und was daraus für die Prüfung folgt. ${date}`,
    sections: {
      said: 'Was das Fahrzeug meldet',
      rule: 'Nach der Regel',
      codes: 'Fehlercodes',
      plan: 'Damit die Eigendiagnose läuft',
    },
    notRead: 'Das Fahrzeug wurde nicht nach seinen Eigendiagnosen gefragt.',
    readAt: 'Gelesen am',
    from: 'Aus',
    capture: (file) => `Bus-Mitschnitt ${file}`,
    byHand: 'von Hand eingetragen',
    item: 'Was',
    noModelYear: 'Das Modelljahr ist nicht bekannt: nach ihm richtet sich, wie viele Eigendiagnosen offen sein dürfen.',
    noCodes: 'Kein Code wurde gelesen.',
    inspectionAt: (date) => `Prüftermin am ${date}.`,
    columns: { start: 'Start', parked: 'Standzeit davor', air: 'Luft', chance: 'Chance', byThen: 'Bis dahin' },
    zone: (name) => `Zeiten des Ortes: ${name}.`,
    pattern: 'So fahren',
    avoid: 'Vermeiden',
    readiness: READINESS_DE,
  },
};
