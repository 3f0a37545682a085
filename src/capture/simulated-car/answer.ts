/** The car's answer to a request of SAE J1979: a whole message, or none when it keeps silent. */
import { troubleCodeBytes } from '../../recording/bus/trouble-codes.ts';
import { COUNTER_NAMES } from '../../recording/bus/vehicle-information.ts';
import { type CarState, clearCar } from './car-state.ts';
import { itemBytes, supportBytes } from './encode-items.ts';

const OUT_OF_RANGE = 0x31;
const NOT_SUPPORTED = 0x11;
const word = (value: number): number[] => [(value >> 8) & 0xff, value & 0xff];

const codeList = (service: number, codes: readonly string[]): number[] => [
  service + 0x40,
  codes.length,
  ...codes.flatMap(troubleCodeBytes),
];

/** Requests to all that a unit cannot answer stay without answer; physical ones get a negative response. */
export function answer(car: CarState, request: Uint8Array, functional: boolean, timeS: number): number[] | undefined {
  const [service, ...rest] = request;
  const refuse = (reason: number): number[] | undefined => (functional ? undefined : [0x7f, service!, reason]);
  switch (service) {
    case 0x01: {
      const items = rest.slice(0, 6).flatMap((id) => {
        const bytes = itemBytes(car, id, timeS);
        return bytes === undefined ? [] : [id, ...bytes];
      });
      return items.length === 0 ? refuse(OUT_OF_RANGE) : [0x41, ...items];
    }
    case 0x02: {
      const [id, frame] = rest;
      if (id === undefined || frame !== 0) return refuse(OUT_OF_RANGE);
      if (id === 0x02)
        return [
          0x42,
          0x02,
          0,
          ...(car.codes.confirmed[0] === undefined ? [0, 0] : troubleCodeBytes(car.codes.confirmed[0])),
        ];
      const bytes = car.codes.confirmed.length > 0 ? itemBytes(car, id, 0) : undefined;
      return bytes === undefined ? refuse(OUT_OF_RANGE) : [0x42, id, 0, ...bytes];
    }
    case 0x03:
      return codeList(service, car.codes.confirmed);
    case 0x07:
      return codeList(service, car.codes.pending);
    case 0x0a:
      return codeList(service, car.codes.permanent);
    case 0x04:
      clearCar(car);
      return [0x44];
    case 0x06: {
      const [id] = rest;
      if (id === undefined) return refuse(OUT_OF_RANGE);
      const ids = car.results.map(({ monitorId }) => monitorId);
      if ((id & 0x1f) === 0) return [0x46, id, ...supportBytes(ids, id)];
      const results = car.results.filter(({ monitorId }) => monitorId === id);
      return results.length === 0
        ? refuse(OUT_OF_RANGE)
        : [
            0x46,
            ...results.flatMap((r) => [
              r.monitorId,
              r.testId,
              r.scalingId,
              ...word(r.value),
              ...word(r.lowest),
              ...word(r.highest),
            ]),
          ];
    }
    case 0x09: {
      const [type] = rest;
      if (type === 0x00) return [0x49, 0x00, ...supportBytes([0x02, 0x08], 0)];
      if (type === 0x02) return [0x49, 0x02, 0x01, ...[...car.vin].map((letter) => letter.charCodeAt(0))];
      if (type !== 0x08) return refuse(OUT_OF_RANGE);
      return [0x49, 0x08, COUNTER_NAMES.length, ...COUNTER_NAMES.flatMap((name) => word(car.counters[name] ?? 0))];
    }
    default:
      return refuse(NOT_SUPPORTED);
  }
}
