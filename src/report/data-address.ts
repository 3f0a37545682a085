/** Bytes as an address that holds them, for a page that needs nothing from outside. */
export function dataAddress(mediaType: string, bytes: Uint8Array): string {
  // In pieces: one call with every byte as an argument overflows the stack.
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x2000) text += String.fromCharCode(...bytes.subarray(i, i + 0x2000));
  return `data:${mediaType};base64,${btoa(text)}`;
}
