import { dataItemLength, isSupportItem, mayHaveSecondByte, supportedItems } from './data-items.ts';
import { type MonitorStatus, readMonitorStatus } from './monitor-status.ts';
import { type NegativeResponse, readNegativeResponse } from './negative-response.ts';
import { readTestResults, type TestResult } from './test-results.ts';
import { CODE_STATUS, type CodeStatus, readCodes, troubleCode } from './trouble-codes.ts';
import { type InUseCounters, readCounters, readVin, SPARK_COUNTERS_TYPE, VIN_TYPE } from './vehicle-information.ts';

/** Told what a message of a control unit says. Bytes are valid during the call only. */
export interface ReplySink {
  /** A data item of service $01; its bytes start at `at`. */
  item(id: number, data: Uint8Array, at: number): void;
  supported(service: number, ids: readonly number[]): void;
  monitorStatus(status: MonitorStatus): void;
  freezeItem(frameNumber: number, id: number, data: Uint8Array, at: number): void;
  freezeCode(frameNumber: number, code: string): void;
  codes(status: CodeStatus, codes: readonly string[]): void;
  testResults(results: readonly TestResult[]): void;
  vin(vin: string): void;
  counters(counters: InUseCounters): void;
  cleared(): void;
  negative(response: NegativeResponse): void;
}

/** Why a whole message said nothing that can be used. */
export const MESSAGE_REASONS = {
  'other-service': 'belongs to a service that is not read here',
  'other-information': 'is vehicle information that is not read here',
  'unknown-item': 'holds an item whose length is not known',
  'wrong-length': 'has a length that its items do not add up to',
} as const;
export type MessageReason = keyof typeof MESSAGE_REASONS;

/** One item of a message: where its bytes start and how many they are. */
interface Piece {
  readonly id: number;
  readonly at: number;
}

/** Parts `id bytes id bytes ...`; each id is followed by `extra` bytes before its data. Absent when it does not come out even. */
function partItems(message: Uint8Array, extra: number, secondByte: number, pieces: Piece[]): MessageReason | undefined {
  let at = 1;
  pieces.length = 0;
  while (at < message.length) {
    const id = message[at]!;
    const known = dataItemLength(id);
    if (known === undefined) return 'unknown-item';
    const length = mayHaveSecondByte(id) ? known + secondByte : known;
    const dataAt = at + 1 + extra;
    if (dataAt + length > message.length) return 'wrong-length';
    pieces.push({ id, at: dataAt });
    at = dataAt + length;
  }
  return pieces.length === 0 ? 'wrong-length' : undefined;
}

const pieces: Piece[] = [];

function readItems(message: Uint8Array, sink: ReplySink): MessageReason | undefined {
  const plain = partItems(message, 0, 0, pieces);
  if (plain !== undefined && partItems(message, 0, 1, pieces) !== undefined) return plain;
  for (const { id, at } of pieces) {
    if (isSupportItem(id)) sink.supported(1, supportedItems(id, message, at));
    else if (id === 0x01) sink.monitorStatus(readMonitorStatus(message, at, 'since-clear'));
    else if (id === 0x41) sink.monitorStatus(readMonitorStatus(message, at, 'this-drive-cycle'));
    else sink.item(id, message, at);
  }
  return undefined;
}

function readFreezeFrame(message: Uint8Array, sink: ReplySink): MessageReason | undefined {
  const plain = partItems(message, 1, 0, pieces);
  if (plain !== undefined && partItems(message, 1, 1, pieces) !== undefined) return plain;
  for (const { id, at } of pieces) {
    const frameNumber = message[at - 1]!;
    if (id === 0x02) {
      if (message[at] !== 0 || message[at + 1] !== 0)
        sink.freezeCode(frameNumber, troubleCode(message[at]!, message[at + 1]!));
    } else if (!isSupportItem(id)) sink.freezeItem(frameNumber, id, message, at);
  }
  return undefined;
}

/** Support bitmaps of services $06 and $09: `service id four bytes`, several behind each other in $06. */
function readSupport(message: Uint8Array, service: number, sink: ReplySink): boolean {
  if (message.length < 6 || (message.length - 1) % 5 !== 0) return false;
  for (let at = 1; at < message.length; at += 5) if (!isSupportItem(message[at]!)) return false;
  for (let at = 1; at < message.length; at += 5) sink.supported(service, supportedItems(message[at]!, message, at + 1));
  return true;
}

function readInformation(message: Uint8Array, sink: ReplySink): MessageReason | undefined {
  const type = message[1];
  if (type === undefined) return 'wrong-length';
  if (isSupportItem(type)) return readSupport(message, 9, sink) ? undefined : 'wrong-length';
  if (type === VIN_TYPE) {
    const vin = readVin(message);
    if (vin === undefined) return 'wrong-length';
    sink.vin(vin);
    return undefined;
  }
  if (type !== SPARK_COUNTERS_TYPE) return 'other-information';
  const counters = readCounters(message);
  if (counters === undefined) return 'wrong-length';
  sink.counters(counters);
  return undefined;
}

/** Reads a whole reply of SAE J1979 on CAN; says why when nothing of it can be used. */
export function decodeReply(message: Uint8Array, sink: ReplySink): MessageReason | undefined {
  switch (message[0]) {
    case 0x41:
      return readItems(message, sink);
    case 0x42:
      return readFreezeFrame(message, sink);
    case 0x43:
    case 0x47:
    case 0x4a: {
      const codes = readCodes(message);
      if (codes === undefined) return 'wrong-length';
      sink.codes(CODE_STATUS[(message[0] - 0x40) as keyof typeof CODE_STATUS], codes);
      return undefined;
    }
    case 0x44:
      if (message.length !== 1) return 'wrong-length';
      sink.cleared();
      return undefined;
    case 0x46: {
      const results = isSupportItem(message[1] ?? 1) ? undefined : readTestResults(message);
      if (results !== undefined) sink.testResults(results);
      else if (!readSupport(message, 6, sink)) return 'wrong-length';
      return undefined;
    }
    case 0x49:
      return readInformation(message, sink);
    case 0x7f: {
      const negative = readNegativeResponse(message);
      if (negative === undefined) return 'wrong-length';
      sink.negative(negative);
      return undefined;
    }
    default:
      return 'other-service';
  }
}
