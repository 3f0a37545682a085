export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** What the caller lends the reader to turn bytes into text; the platform's `TextDecoder` fits. */
export interface TextDecoderPort {
  decode(bytes: Uint8Array, options?: { stream?: boolean }): string;
}
export type MakeTextDecoder = (encoding: Encoding) => TextDecoderPort;

function isUtf8(bytes: Uint8Array): boolean {
  let at = 0;
  while (at < bytes.length) {
    const lead = bytes[at]!;
    const follow =
      lead < 0x80
        ? 0
        : lead >= 0xc2 && lead < 0xe0
          ? 1
          : lead >= 0xe0 && lead < 0xf0
            ? 2
            : lead >= 0xf0 && lead < 0xf5
              ? 3
              : -1;
    if (follow < 0) return false;
    for (let k = 1; k <= follow; k++) {
      // A sequence cut by the end of the sample is not an error.
      if (at + k >= bytes.length) return true;
      if ((bytes[at + k]! & 0xc0) !== 0x80) return false;
    }
    at += follow + 1;
  }
  return true;
}

/**
 * Guesses the encoding from the first bytes: a byte-order mark, else every second byte zero, else
 * valid UTF-8, else the Western one-byte set that older logging programs write.
 */
export function detectEncoding(firstBytes: Uint8Array): Encoding {
  const [a, b] = firstBytes;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  const sample = firstBytes.subarray(0, 512);
  const half = Math.floor(sample.length / 2);
  let evenZeros = 0;
  let oddZeros = 0;
  for (let k = 0; k < half; k++) {
    if (sample[2 * k] === 0) evenZeros++;
    if (sample[2 * k + 1] === 0) oddZeros++;
  }
  if (half >= 4 && oddZeros > 0.8 * half && evenZeros === 0) return 'utf-16le';
  if (half >= 4 && evenZeros > 0.8 * half && oddZeros === 0) return 'utf-16be';
  return isUtf8(firstBytes) ? 'utf-8' : 'windows-1252';
}

/** Names a file that is no text at all by its first characters; undefined when it may be text. */
export function describeNonText(head: string): string | undefined {
  if (head.startsWith('\u001f\u008b') || head.startsWith('\u001f\ufffd') || head.startsWith('\u001f\u2039'))
    return 'a gzip file that was not unpacked';
  if (head.startsWith('PK\u0003\u0004')) return 'a zip archive or spreadsheet workbook';
  if (head.startsWith('%PDF')) return 'a PDF document';
  if (head.startsWith('{') || head.startsWith('[{')) return 'a JSON file';
  if (/^\s*<(\?xml|!doctype|html)/i.test(head)) return 'an XML or HTML document';
  let odd = 0;
  for (let i = 0; i < head.length; i++) {
    const code = head.charCodeAt(i);
    if (code === 0) return 'binary data (a zero byte)';
    if ((code < 32 && code !== 9 && code !== 10 && code !== 13 && code !== 12) || code === 0xfffd) odd++;
  }
  return odd > 0.02 * head.length ? 'binary data (control characters)' : undefined;
}
