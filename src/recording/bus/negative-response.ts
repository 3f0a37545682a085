/** Why a control unit did not do what was asked (ISO 14229-1 / ISO 15031-5, from memory). */
const REASONS: Readonly<Record<number, string>> = {
  16: 'general reject',
  17: 'service not supported',
  18: 'sub-function not supported or wrong format',
  19: 'wrong length or format',
  33: 'busy, ask again',
  34: 'conditions not correct, or wrong sequence',
  49: 'request out of range',
  120: 'received, answer will follow',
};

export const RESPONSE_PENDING = 0x78;

export interface NegativeResponse {
  readonly service: number;
  readonly reasonCode: number;
  readonly reason: string;
}

/** `7F service reason`; absent when the message is not that. */
export function readNegativeResponse(message: Uint8Array): NegativeResponse | undefined {
  if (message.length !== 3 || message[0] !== 0x7f) return undefined;
  const reasonCode = message[2]!;
  return {
    service: message[1]!,
    reasonCode,
    reason: REASONS[reasonCode] ?? `reason ${reasonCode.toString(16).toUpperCase().padStart(2, '0')}`,
  };
}
