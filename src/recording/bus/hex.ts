/** Value of each byte as a hexadecimal digit; 255 for any other byte. */
export const HEX_VALUE: Uint8Array = (() => {
  const table = new Uint8Array(256).fill(255);
  for (let i = 0; i < 10; i++) table[48 + i] = i;
  for (let i = 0; i < 6; i++) {
    table[65 + i] = 10 + i;
    table[97 + i] = 10 + i;
  }
  return table;
})();

export const hexByte = (value: number): string => value.toString(16).toUpperCase().padStart(2, '0');

export function hexText(bytes: Uint8Array | readonly number[], from = 0, to = bytes.length): string {
  let text = '';
  for (let i = from; i < to; i++) text += hexByte(bytes[i]!);
  return text;
}
