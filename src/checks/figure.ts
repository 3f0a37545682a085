/** A number that a shop may change, with where its default comes from. */

export const MARKS = ['published', 'common practice', 'from memory', 'judgement', 'own'] as const;
/** `own`: changed by the shop. */
export type Mark = (typeof MARKS)[number];

export interface Figure {
  readonly key: string;
  readonly value: number;
  readonly mark: Mark;
  readonly unit: 'min' | 'probability' | 'labour hours' | 'money' | 'money/h' | 'fraction' | 'mm' | 'multiple';
  readonly least: number;
  readonly most: number;
}

/** Changed values by key; a key that is absent keeps the default. */
export type Changes = Readonly<Record<string, number>>;

/** Why a change cannot be taken, or nothing. */
export function refusal(figure: Figure | undefined, key: string, value: number): string | undefined {
  if (figure === undefined) return `no figure is called "${key}"`;
  if (!Number.isFinite(value)) return `${key}: found ${value}, expected a number`;
  if (value < figure.least || value > figure.most) {
    return `${key}: found ${value} ${figure.unit}, expected ${figure.least} to ${figure.most}`;
  }
  return undefined;
}

/** The figures as they stand with a shop's changes. Throws on a change that cannot be taken. */
export function applyChanges(defaults: readonly Figure[], changes: Changes): readonly Figure[] {
  const byKey = new Map(defaults.map((figure) => [figure.key, figure]));
  for (const [key, value] of Object.entries(changes)) {
    const problem = refusal(byKey.get(key), key, value);
    if (problem !== undefined) throw new RangeError(problem);
  }
  return defaults.map((figure) => {
    const value = changes[figure.key];
    return value === undefined || value === figure.value ? figure : { ...figure, value, mark: 'own' };
  });
}
