import { idInWords } from './address.ts';
import type { BusLog } from './bus-log.ts';
import { EXPECTED_LINES, LINE_REASONS, type LineCounts } from './capture-counts.ts';
import type { ControlUnit } from './control-unit.ts';
import { MESSAGE_REASONS } from './decode-message.ts';
import { TRANSPORT_ANOMALIES, type TransportAnomaly } from './iso-tp.ts';
import type { CaptureClock } from './stamps.ts';

interface Facts {
  readonly log: BusLog;
  readonly clock: CaptureClock;
  readonly counts: LineCounts;
  readonly units: readonly ControlUnit[];
  readonly backward: number;
  readonly hasPressure: boolean;
  readonly remarks: readonly string[];
}

const times = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** What a reader should know of a capture: everything that was lost, left out or decided. */
export function captureWarnings({ log, clock, counts, units, backward, hasPressure, remarks }: Facts): string[] {
  const warnings = [...remarks];
  for (const [reason, { count, firstLines, example }] of counts.skipped)
    if (!EXPECTED_LINES.includes(reason))
      warnings.push(
        `${times(count, 'line')} left out (first: line ${firstLines[0]}, "${example}"): each ${LINE_REASONS[reason]}`,
      );
  for (const unit of units) {
    const name = idInWords(unit.id, unit.extended);
    for (const [anomaly, count] of Object.entries(unit.assembler.counts.anomalies) as [TransportAnomaly, number][])
      if (count > 0) warnings.push(`unit ${name}: ${times(count, 'time')}: ${TRANSPORT_ANOMALIES[anomaly]}`);
    for (const [reason, count] of unit.unread)
      if (reason === 'wrong-length' || reason === 'unknown-item')
        warnings.push(`unit ${name}: ${times(count, 'message')} not read: each ${MESSAGE_REASONS[reason]}`);
    for (const { response, count } of unit.negatives.values())
      warnings.push(
        `unit ${name} refused service $${response.service.toString(16).toUpperCase().padStart(2, '0')} ${times(count, 'time')}: ${response.reason}`,
      );
    if (unit.clearedTimes.length > 0)
      warnings.push(
        `unit ${name} was told to clear its codes during the capture: what it said before is older than that`,
      );
  }
  if (backward > 0) warnings.push(`${times(backward, 'sample')} left out: the clock of the capture went back`);
  if (clock.setBack > 0)
    warnings.push('the local clock was put back an hour during the capture; an hour was added to what follows');
  if (clock.meaning === 'since-last-frame')
    warnings.push('the time stamps count from the frame before; they were added up');
  if (clock.meaning === 'none' && log.frames > 0)
    warnings.push(
      'the frames have no time stamps: codes and status were read, but there is no recording; record with candump -L',
    );
  for (const { fromS, toS } of log.pauses)
    warnings.push(
      `the adapter was away for ${(toS - fromS).toFixed(1)} s from ${(fromS - (log.firstS ?? 0)).toFixed(1)} s on`,
    );
  if (log.beyondLimit > 0)
    warnings.push(
      `${log.beyondLimit} samples were read and not kept: the capture is too long for one recording, part it`,
    );
  if (log.frames === 0)
    warnings.push('there is no diagnostic frame (7DF, 7E0 to 7EF, 18DA..F1, 18DAF1..) in the capture');
  else if (!hasPressure) warnings.push('there is no tank pressure (items $32, $53, $54) in the capture');
  return warnings;
}
