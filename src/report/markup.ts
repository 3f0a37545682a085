/** Text from outside never becomes markup. */
const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export const escapeMarkup = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);

/** Tagged template: every value is escaped unless it is markup already, an array of markup, or absent. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

type Piece = Markup | string | number | null | undefined | readonly Markup[];

const piece = (value: Piece): string => {
  if (value === null || value === undefined) return '';
  if (value instanceof Markup) return value.text;
  if (typeof value === 'object') return value.map((part) => part.text).join('');
  return escapeMarkup(String(value));
};

export const markup = (strings: TemplateStringsArray, ...values: readonly Piece[]): Markup =>
  new Markup(strings.reduce((text, part, i) => text + piece(values[i - 1]) + part));
