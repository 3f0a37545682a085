/** Text as it is searched: case, accents and width do not matter. */

/** Text columns of PostgreSQL cannot hold the character 0. */
export const plainText = (text: string): string => text.replaceAll('\0', '');

export function searchable(text: string): string {
  return plainText(text).normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss');
}

export function searchWords(words: string): readonly string[] {
  return searchable(words)
    .split(/\s+/)
    .filter((word) => word !== '');
}
