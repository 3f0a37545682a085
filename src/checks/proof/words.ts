/** The verdict in words that a customer and an inspector understand. */
import type { MissingId, Proof, ProofVerdict } from './proof.ts';

export type Language = 'en' | 'de';

const VERDICT: Readonly<Record<Language, Readonly<Record<ProofVerdict, string>>>> = {
  en: {
    held: 'The repair held.',
    'not-held': 'The repair did not hold.',
    'not-proven': 'Not proven: it cannot yet be said whether the repair held.',
  },
  de: {
    held: 'Die Reparatur hat gehalten.',
    'not-held': 'Die Reparatur hat nicht gehalten.',
    'not-proven': 'Nicht nachgewiesen: Ob die Reparatur hält, lässt sich noch nicht sagen.',
  },
};

const MISSING_WORDS: Readonly<Record<Language, Readonly<Record<MissingId, string>>>> = {
  en: {
    'no measurement before': 'the system was not measured before the repair',
    'no measurement after': 'the system has not been measured since the repair',
    'limit not certain': 'the measurement after is too coarse, or too near the limit, to say that the limit is met',
    'difference not certain': 'before and after are too near each other to say that the repair made a difference',
    'another leak not excluded': 'another leak may remain',
    'conditions differ': 'before and after were measured under different conditions',
    'self-test not run': 'the car’s own test has not run since the repair',
    'causes not covered': 'some causes that were possible before are not covered by this test',
  },
  de: {
    'no measurement before': 'vor der Reparatur wurde nicht gemessen',
    'no measurement after': 'seit der Reparatur wurde nicht gemessen',
    'limit not certain': 'die Messung danach ist zu grob oder liegt zu nah am Grenzwert',
    'difference not certain': 'vorher und nachher liegen zu nah beieinander',
    'another leak not excluded': 'ein weiteres Leck kann vorhanden sein',
    'conditions differ': 'vorher und nachher wurde unter verschiedenen Bedingungen gemessen',
    'self-test not run': 'die Eigenprüfung des Fahrzeugs ist seit der Reparatur nicht gelaufen',
    'causes not covered': 'einige vorher mögliche Ursachen deckt diese Prüfung nicht ab',
  },
};

/** Rounded so that it never claims certainty. */
export function percentWords(p: number): string {
  const percent = Math.round(p * 100);
  if (percent >= 100) return 'over 99 %';
  return percent <= 0 ? 'under 1 %' : `${percent} %`;
}

const percentIn = (language: Language, p: number): string =>
  language === 'en' ? percentWords(p) : percentWords(p).replace('over', 'über').replace('under', 'unter');

/** Sentences, verdict first. `limitMm`: the limit that was judged against. */
export function proofInWords(proof: Proof, limitMm: number, language: Language = 'en'): readonly string[] {
  const say = (p: number): string => percentIn(language, p);
  const mm = limitMm.toFixed(2);
  const sentences = [VERDICT[language][proof.verdict]];
  if (proof.limitMet !== undefined) {
    sentences.push(
      language === 'en'
        ? `The remaining leak is below ${mm} mm with a probability of ${say(proof.limitMet)}.`
        : `Das verbleibende Leck liegt mit einer Wahrscheinlichkeit von ${say(proof.limitMet)} unter ${mm.replace('.', ',')} mm.`,
    );
  }
  if (proof.madeDifference !== undefined) {
    sentences.push(
      language === 'en'
        ? `The repair made a difference with a probability of ${say(proof.madeDifference)}.`
        : `Die Reparatur hat mit einer Wahrscheinlichkeit von ${say(proof.madeDifference)} etwas bewirkt.`,
    );
  }
  if (proof.anotherLeak !== undefined) {
    sentences.push(
      language === 'en'
        ? `Probability that another leak remains: ${say(proof.anotherLeak)}.`
        : `Wahrscheinlichkeit, dass ein weiteres Leck bleibt: ${say(proof.anotherLeak)}.`,
    );
  }
  if (proof.missing.length > 0) {
    const list = proof.missing.map((id) => MISSING_WORDS[language][id]).join('; ');
    sentences.push(language === 'en' ? `Still missing: ${list}.` : `Es fehlt noch: ${list}.`);
  }
  return sentences;
}
