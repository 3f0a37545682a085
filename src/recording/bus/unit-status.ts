import { idInWords } from './address.ts';
import type { CarStatus, UnitReading } from './capture-reading.ts';
import type { ControlUnit } from './control-unit.ts';

const ITEM = { warmUps: 0x30, distance: 0x31, distanceWithLamp: 0x21, timeWithLamp: 0x4d, time: 0x4e } as const;

/** What one unit says of itself. */
function unitStatus(unit: ControlUnit): CarStatus {
  const item = (id: number): number | undefined => unit.latestItems.get(id);
  const found = {
    sinceClear: unit.sinceClear,
    thisDrive: unit.thisDrive,
    warmUpsSinceClear: item(ITEM.warmUps),
    distanceSinceClearM: item(ITEM.distance),
    distanceWithLampM: item(ITEM.distanceWithLamp),
    timeWithLampS: item(ITEM.timeWithLamp),
    timeSinceClearS: item(ITEM.time),
    inUse: unit.inUse,
    vin: unit.vinText,
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined)) as CarStatus;
}

const hasEvapMonitor = (unit: ControlUnit): boolean =>
  unit.sinceClear?.monitors.some(({ name, supported }) => name === 'evaporative system' && supported) ?? false;

/** One status for the car: the unit with the evaporative monitor speaks first, others fill what it did not say. */
export function carStatus(units: readonly ControlUnit[]): CarStatus {
  const ordered = [...units].sort((a, b) => Number(hasEvapMonitor(b)) - Number(hasEvapMonitor(a)));
  const status: CarStatus = {};
  for (const unit of ordered.reverse()) Object.assign(status, unitStatus(unit));
  return status;
}

export function readUnit(unit: ControlUnit): UnitReading {
  const { replyTimes } = unit;
  return {
    unit: idInWords(unit.id, unit.extended),
    supportedItems: [...(unit.supportedIds.get(1) ?? [])].sort((a, b) => a - b),
    status: unitStatus(unit),
    results: [...unit.results.values()],
    negatives: [...unit.negatives.values()].map(({ response: { service, reason }, count }) => ({
      service,
      reason,
      count,
    })),
    transport: unit.assembler.counts,
    unread: [...unit.unread].map(([reason, count]) => ({ reason, count })),
    ...(replyTimes.count === 0
      ? {}
      : {
          replyTimes: {
            count: replyTimes.count,
            meanS: replyTimes.sumS / replyTimes.count,
            longestS: replyTimes.longestS,
          },
        }),
  };
}
