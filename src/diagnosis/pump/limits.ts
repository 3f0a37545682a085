/** What a pump run's recording cannot tell, whatever the fit says. */
import type { Recording } from '../../recording/recording.ts';
import { readSwitch } from '../single-run/switches.ts';

export type PumpLimit =
  /** The pump never ran through its orifice: pump and hole cannot be told apart. */
  | { readonly kind: 'no-reference' }
  /** The pump was never turned to the tank. */
  | { readonly kind: 'tank-untested' }
  /** The pump's turn on the tank ended before its pressure could settle. */
  | { readonly kind: 'tank-turn-short'; readonly lastedS: number }
  /** Purge was never opened on the pumped tank: the purge valve is not proven. */
  | { readonly kind: 'purge-untested' };

/** Common practice, no source: five minutes and more; below two a small hole hides in the rise. */
const LEAST_TURN_S = 120;

export function pumpLimits(recording: Recording): PumpLimit[] {
  const pumpOn = readSwitch(recording, 'pumpOn', 0);
  const toTank = readSwitch(recording, 'changeoverToTank', 0);
  const duty = readSwitch(recording, 'purgeDuty', 0);
  let reference = false;
  let purged = false;
  let turnS = 0;
  const { timeS } = recording;
  for (let i = 1; i < timeS.length; i++) {
    const t = timeS[i]!;
    if (pumpOn.at(t) <= 0.5) continue;
    if (toTank.at(t) <= 0.5) reference = true;
    else if (duty.at(t) > 0) purged = true;
    else turnS += t - timeS[i - 1]!;
  }
  const limits: PumpLimit[] = [];
  if (!reference) limits.push({ kind: 'no-reference' });
  if (turnS === 0) limits.push({ kind: 'tank-untested' });
  else if (turnS < LEAST_TURN_S) limits.push({ kind: 'tank-turn-short', lastedS: turnS });
  if (turnS > 0 && !purged) limits.push({ kind: 'purge-untested' });
  return limits;
}
