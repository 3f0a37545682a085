/** A section of a job as lines of words, so that two states of it can be laid side by side. */

export interface Line {
  /** The same part in both states has the same key, wherever in its list it stands. */
  readonly key: string;
  /** Where in the section, in words. */
  readonly name: string;
  /** What stands there, in words. */
  readonly text: string;
  /** What is compared: two states may read alike and still differ. */
  readonly exact: string;
}

export interface LineWords {
  /** Name of a field; undefined for one that is of no use to a reader. */
  readonly field: (key: string) => string | undefined;
  /** A value under a field. */
  readonly value: (key: string, value: string | number | boolean) => string;
  /** An item of a list that has no name of its own. */
  readonly item: (number: number) => string;
  /** So many figures that are not laid out one by one. */
  readonly figures: (count: number) => string;
  /** Joins words of a list. */
  readonly list: (words: readonly string[]) => string;
}

type Leaf = string | number | boolean;
type Fields = Readonly<Record<string, unknown>>;

/** Readings of the car, conditions of a monitor: dozens of figures that nobody compares in a table. */
const WHOLE: ReadonlySet<string> = new Set(['status', 'results', 'conditions']);
/** Keyed by numbers of a form: what was entered is enough. */
const VALUES_ONLY: ReadonlySet<string> = new Set(['numbers']);
/** What an item of a list is called by, best first. */
const TITLES = ['label', 'name', 'what', 'code', 'fileName', 'column', 'text', 'caption'] as const;
const TITLE_LENGTH = 48;

const isLeaf = (value: unknown): value is Leaf => typeof value !== 'object';
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function titleOf(item: Fields): string | undefined {
  for (const key of TITLES) {
    const title = item[key];
    if (typeof title !== 'string' || title === '') continue;
    return title.length > TITLE_LENGTH ? `${title.slice(0, TITLE_LENGTH)} …` : title;
  }
  return undefined;
}

const leafCount = (value: unknown): number =>
  value === null || value === undefined
    ? 0
    : isLeaf(value)
      ? 1
      : Object.values(value).reduce((sum: number, part) => sum + leafCount(part), 0);

/** One line for each thing that a person would name. */
export const sectionLines = (value: unknown, words: LineWords, of = ''): readonly Line[] => [
  ...linesIn(value, of, { key: '', names: [] }, words),
];

interface Place {
  readonly key: string;
  readonly names: readonly string[];
}

const within = ({ key, names }: Place, part: string, name: string): Place => ({
  key: `${key}/${part}`,
  names: [...names, name],
});

function* linesIn(part: unknown, field: string, place: Place, words: LineWords): Iterable<Line> {
  if (part === null || part === undefined) return;
  const text = wholeText(part, field, words);
  if (text !== undefined) {
    yield { key: place.key, name: place.names.join(' · '), text, exact: JSON.stringify(part) };
  } else if (Array.isArray(part)) {
    for (const [i, item] of part.entries()) {
      const title = isFields(item) ? titleOf(item) : undefined;
      const id = isFields(item) && typeof item.id === 'string' ? item.id : (title ?? `${i}`);
      yield* linesIn(item, field, within(place, id, title ?? words.item(i + 1)), words);
    }
  } else {
    for (const [name, inner] of Object.entries(part)) {
      const said = words.field(name);
      if (said !== undefined) yield* linesIn(inner, name, within(place, name, said), words);
    }
  }
}

/** What stands in one line; undefined for what is laid out part by part. */
function wholeText(part: unknown, field: string, words: LineWords): string | undefined {
  if (isLeaf(part)) return words.value(field, part);
  if (WHOLE.has(field)) return words.figures(leafCount(part));
  if (VALUES_ONLY.has(field)) return words.list(Object.values(part as Fields).map(String));
  if (!Array.isArray(part) || part.length === 0 || !part.every(isLeaf)) return undefined;
  return words.list(part.map((item) => words.value(field, item)));
}

export interface Part {
  readonly key: string;
  readonly name: string;
  readonly mine: string | undefined;
  readonly theirs: string | undefined;
}

/** Only what differs, in the order of the first state, then what only the second has. */
export function partsThatDiffer(mine: readonly Line[], theirs: readonly Line[]): readonly Part[] {
  const a = new Map(mine.map((line) => [line.key, line]));
  const b = new Map(theirs.map((line) => [line.key, line]));
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((key) => {
    const [one, other] = [a.get(key), b.get(key)];
    if (one?.exact === other?.exact) return [];
    return [{ key, name: (one ?? other)!.name, mine: one?.text, theirs: other?.text }];
  });
}
