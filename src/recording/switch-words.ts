/** Words that loggers write for on/off commands, in English and German. */
const ON = new Set([
  'on',
  'true',
  'yes',
  'active',
  'energised',
  'energized',
  'commanded',
  'enabled',
  'high',
  'ein',
  'an',
  'wahr',
  'ja',
  'aktiv',
  'bestromt',
]);
const OFF = new Set([
  'off',
  'false',
  'no',
  'inactive',
  'de-energised',
  'de-energized',
  'not commanded',
  'disabled',
  'low',
  'aus',
  'falsch',
  'nein',
  'inaktiv',
  'stromlos',
]);
const OPEN = new Set(['open', 'opened', 'offen', 'auf', 'geöffnet']);
const SHUT = new Set(['closed', 'close', 'shut', 'sealed', 'zu', 'geschlossen']);

/** What a word means for an on/off channel. `openIsOne` tells whether its 1 stands for open. */
export function switchValue(text: string, openIsOne: boolean): 0 | 1 | undefined {
  const word = text.trim().toLowerCase();
  if (ON.has(word)) return 1;
  if (OFF.has(word)) return 0;
  if (OPEN.has(word)) return openIsOne ? 1 : 0;
  if (SHUT.has(word)) return openIsOne ? 0 : 1;
  return undefined;
}

export const isWord = (text: string): boolean => switchValue(text, true) !== undefined;
export const isOpenOrShut = (text: string): boolean => {
  const word = text.trim().toLowerCase();
  return OPEN.has(word) || SHUT.has(word);
};
