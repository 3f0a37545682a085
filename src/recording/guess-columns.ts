import { NAME_RULES, OTHER_THINGS, SECOND_BANK } from './column-names.ts';
import type { CsvFormat } from './csv-format.ts';
import type { ColumnMapping } from './mapping.ts';
import { CHANNEL_ORDER, type ChannelQuantity, channelInWords, OWN_COLUMNS, ownHeader } from './own-columns.ts';
import type { ChannelName } from './recording.ts';
import { isOpenOrShut, isWord } from './switch-words.ts';
import { type ColumnUnit, lookUpUnit } from './unit-lookup.ts';

/** Header in lower case, camel case parted, everything else one space. */
export function plainHeader(header: string): string {
  return header
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}

export interface UnitHint {
  readonly unit: ColumnUnit;
  readonly reason: string;
}

/** The unit that a header states: in brackets, behind an underscore, or as its last word. */
export function unitInHeader(header: string, quantity: ChannelQuantity): UnitHint | undefined {
  const bracket = /[[({]\s*([^\])}]+?)\s*[\])}]/.exec(header);
  if (bracket) {
    const unit = lookUpUnit(bracket[1]!);
    if (unit) return { unit, reason: `the header says ${bracket[0]}` };
  }
  const pieces = header.trim().split(/[\s_]+/);
  for (let take = Math.min(3, pieces.length - 1); take >= 1; take--) {
    const text = pieces.slice(-take).join('');
    // One letter is taken for a unit only behind an underscore ("temp_c"); "F" alone may be anything.
    if (/^[a-z0-9]$/i.test(text) && !/_[a-z]$/i.test(header.trim())) continue;
    const unit = lookUpUnit(text);
    // A last word counts only where it fits: "in" is rarely inches. Volts tell that a sensor was read raw.
    if (unit && (unit.quantity === quantity || unit.quantity === 'voltage'))
      return { unit, reason: `the header ends in "${pieces.slice(-take).join('_')}"` };
  }
  return undefined;
}

interface NameMatch {
  readonly channel: ChannelName;
  readonly confidence: number;
  readonly reason: string;
  readonly inverted: boolean;
}

function matchOwn(header: string): NameMatch | undefined {
  const name = header.trim().toLowerCase();
  for (const channel of CHANNEL_ORDER) {
    const { base, quantity } = OWN_COLUMNS[channel];
    if (name === ownHeader(channel)) return { channel, confidence: 1, reason: 'our own column name', inverted: false };
    if (name.startsWith(`${base}_`) && lookUpUnit(name.slice(base.length + 1))?.quantity === quantity)
      return { channel, confidence: 1, reason: 'our own column name with another unit', inverted: false };
  }
  return undefined;
}

function matchWords(header: string): NameMatch | undefined {
  const plain = plainHeader(header);
  if (OTHER_THINGS.test(plain) || SECOND_BANK.test(plain)) return undefined;
  const rule = NAME_RULES.find(({ pattern }) => pattern.test(plain));
  if (!rule) return undefined;
  return {
    channel: rule.channel,
    confidence: rule.confidence,
    reason: 'words in the header',
    inverted: rule.inverted === true,
  };
}

const isGauge = /\b(gauge|relative|rel|psig|barg|diff(erential)?)\b/i;
const isAbsolute = /\b(abs|absolute|psia|bara)\b/i;

function guessOne(header: string, unitCell: string | undefined, sample: readonly string[]): ColumnMapping {
  const found = matchOwn(header) ?? matchWords(header);
  if (!found) return { column: header, channel: null, confidence: 0, reasons: ['the header is none that is known'] };
  const reasons = [found.reason];
  const fromRow = unitCell === undefined ? undefined : lookUpUnit(unitCell.trim().replace(/^[[({]|[\])}]$/g, ''));
  const hint = fromRow
    ? { unit: fromRow, reason: `the unit row says ${unitCell?.trim()}` }
    : unitInHeader(header, OWN_COLUMNS[found.channel].quantity);
  let { channel, confidence } = found;
  let quantity = OWN_COLUMNS[channel].quantity;
  // A tank pressure in volts is the sensor's output.
  if (hint?.unit.quantity === 'voltage' && channel === 'tankPressureGaugePa') {
    channel = 'tankPressureSensorV';
    quantity = 'voltage';
  }
  if (quantity === 'switch') {
    const words = sample.filter(isOpenOrShut).length;
    if (words > 0) reasons.push('its cells say open or closed');
    else if (channel === 'ventClosed' && found.confidence < 0.95)
      reasons.push('on is taken as energised, and an energised vent valve is closed (common practice)');
    return { column: header, channel, ...(found.inverted ? { inverted: true } : {}), confidence, reasons };
  }
  if (channel !== 'purgeDuty' && sample.filter(isWord).length > sample.length / 2) {
    return { column: header, channel: null, confidence: 0, reasons: ['cells hold words where numbers are expected'] };
  }
  if (hint && hint.unit.quantity !== quantity) {
    reasons.push(`but ${hint.reason}, which is no unit of ${quantity}`);
    return { column: header, channel: null, confidence: 0, reasons };
  }
  const result: ColumnMapping = { column: header, channel, confidence, reasons };
  if (hint) {
    reasons.push(hint.reason);
    result.unit = hint.unit.symbol;
  }
  if (quantity === 'pressure' && channel !== 'barometricPa' && channel !== 'manifoldAbsPa') {
    const text = `${plainHeader(header)} ${unitCell ?? ''}`;
    if (hint?.unit.reference) result.reference = hint.unit.reference;
    else if (isGauge.test(text)) result.reference = 'gauge';
    else if (isAbsolute.test(text)) result.reference = 'absolute';
    // Our own names mean gauge.
    else if (found.confidence === 1) result.reference = 'gauge';
  }
  // Where a source gives both, the gauge pressure needs no barometer.
  if (result.reference === 'absolute') result.confidence = confidence - 0.05;
  return result;
}

/** Guesses what each column holds, from its header, the unit row and the kind of its cells. */
export function guessColumns(format: CsvFormat, timeColumns: readonly string[]): ColumnMapping[] {
  const guesses = format.header
    .map((header, k) => ({ header, k }))
    .filter(({ header }) => !timeColumns.includes(header))
    .map(({ header, k }) =>
      guessOne(
        header,
        format.unitRow?.[k],
        format.sample.map((row) => row[k] ?? ''),
      ),
    );
  // One column per channel: the surest, of equals the first.
  for (const guess of guesses) {
    if (guess.channel === null) continue;
    const rivals = guesses.filter((other) => other.channel === guess.channel);
    const best = rivals.reduce((a, b) => ((b.confidence ?? 0) > (a.confidence ?? 0) ? b : a));
    if (guess === best) continue;
    guess.reasons = [`looks like ${channelInWords(guess.channel)}, which column "${best.column}" already gives`];
    guess.channel = null;
    guess.confidence = 0;
  }
  return guesses;
}
