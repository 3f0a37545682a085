/** The kind of a file by its first bytes; what a sender says of it is not believed. */

const startsWith = (bytes: Uint8Array, text: string, at = 0): boolean =>
  Buffer.from(bytes.subarray(at, at + text.length)).toString('latin1') === text;

/** A page may show these; everything else is only saved. */
export const SHOWN_TYPES: readonly string[] = ['image/png', 'image/jpeg', 'image/webp', 'image/gif', 'application/pdf'];

export function mediaTypeOf(firstBytes: Uint8Array): string {
  if (startsWith(firstBytes, '\x89PNG\r\n\x1a\n')) return 'image/png';
  if (startsWith(firstBytes, '\xff\xd8\xff')) return 'image/jpeg';
  if (startsWith(firstBytes, 'RIFF') && startsWith(firstBytes, 'WEBP', 8)) return 'image/webp';
  if (startsWith(firstBytes, 'GIF87a') || startsWith(firstBytes, 'GIF89a')) return 'image/gif';
  if (startsWith(firstBytes, '%PDF-')) return 'application/pdf';
  return 'application/octet-stream';
}
