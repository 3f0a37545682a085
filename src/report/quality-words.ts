/** The quality of a recording in words: what a technician should know before trusting it. */

import { channelInWords } from '../recording/own-columns.ts';
import type { Quality } from '../recording/quality.ts';
import { duration, NBSP } from './numbers.ts';

const three = (value: number): string => String(Number(value.toPrecision(3)));

function timeWords({ time }: Quality): string[] {
  const remarks: string[] = [];
  if (time.rateHz !== undefined) {
    const rate =
      time.rateHz >= 0.95
        ? `${three(time.rateHz)} samples per second`
        : `one sample every ${three(1 / time.rateHz)}${NBSP}s`;
    const missing = time.missingSamples === 0 ? 'none missing' : `about ${time.missingSamples} missing`;
    remarks.push(`${rate}, ${missing}`);
  }
  for (const gap of time.gaps.slice(0, 3)) {
    remarks.push(`pause from ${duration(gap.fromS)} to ${duration(gap.toS)}`);
  }
  if (time.gaps.length > 3) remarks.push(`${time.gaps.length - 3} more pauses`);
  return remarks;
}

function pressureWords(quality: Quality): string[] {
  const pressure = quality.channels.find(({ channel }) => channel === 'tankPressureGaugePa');
  if (pressure === undefined) return ['no tank pressure'];
  const steps = pressure.resolution === undefined ? '' : `steps of ${three(pressure.resolution)}${NBSP}Pa`;
  const noise = pressure.noise === undefined ? '' : `noise ${three(pressure.noise)}${NBSP}Pa`;
  const both = [steps, noise].filter((part) => part !== '').join(', ');
  return both === '' ? [] : [`tank pressure: ${both}`];
}

/** A channel at its end for this share of the time is worth a word (judgement). */
const CLIP_WORTH_SAYING = 0.002;

export function qualityInWords(quality: Quality): readonly string[] {
  const remarks = [...timeWords(quality), ...pressureWords(quality)];
  for (const channel of quality.channels) {
    const name = channelInWords(channel.channel);
    if (channel.stuck) remarks.push(`${name} does not move at all`);
    const clipped = channel.clippedLow + channel.clippedHigh;
    if (clipped > CLIP_WORTH_SAYING)
      remarks.push(`${name} stands at the end of its range for ${three(clipped * 100)}${NBSP}% of the time`);
    if (channel.missing > 0) remarks.push(`${name}: ${channel.missing} of ${channel.samples} samples absent`);
    if (channel.spikes > 0) remarks.push(`${name}: ${channel.spikes} single spike${channel.spikes === 1 ? '' : 's'}`);
  }
  return remarks;
}
