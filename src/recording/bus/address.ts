/**
 * Who speaks to whom on a diagnostic bus (ISO 15765-4): 11-bit 7DF functional, 7E0..7E7 physical requests, 7E8..7EF
 * replies; 29-bit 18DB33F1 functional, 18DAxxF1 physical requests, 18DAF1xx replies. Source of the numbers:
 * Wireshark packet-obd-ii.c, confirmed.
 */
export type AddressRole = 'functional-request' | 'physical-request' | 'reply';

const FUNCTIONAL_11 = 0x7df;
const FUNCTIONAL_29 = 0x18db33f1;

/** True for every identifier that diagnosis uses; cheap, as it is asked of every frame on the bus. */
export function isDiagnosticId(id: number, extended: boolean): boolean {
  if (!extended) return (id >= 0x7e0 && id <= 0x7ef) || id === FUNCTIONAL_11;
  return id === FUNCTIONAL_29 || (id >>> 16 === 0x18da && ((id >>> 8) & 0xff) !== (id & 0xff) && hasTester(id));
}

const TESTER = 0xf1;
const hasTester = (id: number): boolean => ((id >>> 8) & 0xff) === TESTER || (id & 0xff) === TESTER;

/** Role of a diagnostic identifier. */
export function addressRole(id: number, extended: boolean): AddressRole {
  if (!extended) return id === FUNCTIONAL_11 ? 'functional-request' : id < 0x7e8 ? 'physical-request' : 'reply';
  if (id === FUNCTIONAL_29) return 'functional-request';
  return ((id >>> 8) & 0xff) === TESTER ? 'reply' : 'physical-request';
}

/** Identifier under which a control unit replies, whichever side of the talk is given. */
export function replyId(id: number, extended: boolean): number {
  if (!extended) return id >= 0x7e8 ? id : id + 8;
  return addressRole(id, extended) === 'reply' ? id : 0x18daf100 | ((id >>> 8) & 0xff);
}

/** Identifier for requests to the control unit that replies under `id`. */
export function requestId(id: number, extended: boolean): number {
  return extended ? ((0x18da << 16) | ((id & 0xff) << 8) | TESTER) >>> 0 : id - 8;
}

export const functionalId = (extended: boolean): number => (extended ? FUNCTIONAL_29 : FUNCTIONAL_11);

/** As it is written in captures: three or eight digits. */
export const idInWords = (id: number, extended: boolean): string =>
  id
    .toString(16)
    .toUpperCase()
    .padStart(extended ? 8 : 3, '0');
