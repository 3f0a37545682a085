/** Diagnostic trouble codes as typed (SAE J2012 form): "p0456, P0442". */
const CODE = /^[PCBU][0-3][0-9A-F]{3}$/;

/** The codes in a text, each once, or null when something else stands in it. */
export function codesIn(text: string): string[] | null {
  const words = text
    .toUpperCase()
    .split(/[\s,;]+/)
    .filter((word) => word !== '');
  return words.every((word) => CODE.test(word)) ? [...new Set(words)] : null;
}
