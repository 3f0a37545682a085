/** Trouble codes as services $03 (confirmed), $07 (pending) and $0A (permanent) send them. SAE J2012 / ISO 15031-6. */
export const CODE_STATUS = { 3: 'confirmed', 7: 'pending', 10: 'permanent' } as const;
export type CodeStatus = (typeof CODE_STATUS)[keyof typeof CODE_STATUS];

const SYSTEMS = 'PCBU';

/** `P0442` from its two bytes. */
export function troubleCode(high: number, low: number): string {
  const digits = (((high & 0x0f) << 8) | low).toString(16).toUpperCase().padStart(3, '0');
  return `${SYSTEMS[high >> 6]}${(high >> 4) & 3}${digits}`;
}

/** The two bytes of a code: the inverse of `troubleCode`. */
export function troubleCodeBytes(code: string): [number, number] {
  const high = (SYSTEMS.indexOf(code[0]!) << 6) | (Number(code[1]) << 4) | Number.parseInt(code[2]!, 16);
  return [high, Number.parseInt(code.slice(3), 16)];
}

/** Codes of a reply on CAN: a count, then pairs. Absent when count and length disagree. */
export function readCodes(message: Uint8Array): string[] | undefined {
  const count = message[1];
  if (count === undefined || message.length < 2 + 2 * count) return undefined;
  // Some units pad the message itself; anything but zeros there is damage.
  for (let i = 2 + 2 * count; i < message.length; i++) if (message[i] !== 0) return undefined;
  const codes: string[] = [];
  for (let i = 0; i < count; i++) codes.push(troubleCode(message[2 + 2 * i]!, message[3 + 2 * i]!));
  return codes;
}
