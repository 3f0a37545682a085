import type { ColumnMapping } from './mapping.ts';
import { OWN_COLUMNS } from './own-columns.ts';
import { type DecimalMark, isMissing, parseDecimal } from './parse-number.ts';
import { Tally } from './read-report.ts';
import type { ChannelName } from './recording.ts';
import { switchValue } from './switch-words.ts';

const BLOCK = 8192;

/** A growing row of numbers, kept in blocks so that nothing is copied until all are there. */
export class GrowingNumbers {
  private readonly full: Float64Array[] = [];
  private block = new Float64Array(BLOCK);
  private used = 0;

  get length(): number {
    return this.full.length * BLOCK + this.used;
  }

  push(value: number): void {
    if (this.used === BLOCK) {
      this.full.push(this.block);
      this.block = new Float64Array(BLOCK);
      this.used = 0;
    }
    this.block[this.used++] = value;
  }

  replaceLast(value: number): void {
    this.block[this.used - 1] = value;
  }

  /** All numbers in an array of their own. */
  values(): Float64Array {
    return this.slice(0, this.length);
  }

  /** Some of them, in an array of their own. */
  slice(from: number, to: number): Float64Array {
    const part = new Float64Array(Math.max(0, to - from));
    for (let k = Math.floor(from / BLOCK); k * BLOCK < to; k++) {
      const block = this.full[k] ?? this.block;
      const first = Math.max(0, from - k * BLOCK);
      part.set(block.subarray(first, Math.min(BLOCK, to - k * BLOCK)), k * BLOCK + first - from);
    }
    return part;
  }
}

/** On/off channels whose 1 stands for open. */
const OPEN_IS_ONE: ReadonlySet<ChannelName> = new Set(['isolationOpen']);

/** One mapped column as it is read: numbers as written, before any unit. */
export class RawColumn {
  readonly index: number;
  readonly channel: ChannelName;
  readonly mapping: ColumnMapping;
  readonly numbers = new GrowingNumbers();
  readonly unreadable = new Tally();
  missing = 0;
  private readonly decimal: DecimalMark;
  private readonly openIsOne: boolean;
  private readonly takesWords: boolean;

  constructor(index: number, channel: ChannelName, mapping: ColumnMapping, decimal: DecimalMark) {
    this.index = index;
    this.channel = channel;
    this.mapping = mapping;
    this.decimal = decimal;
    // In a column that says the opposite of its channel the words turn round too.
    // A purge command may be written as on and off, but not beside numbers in a stated unit.
    this.takesWords =
      OWN_COLUMNS[channel].quantity === 'switch' || (channel === 'purgeDuty' && mapping.unit === undefined);
    this.openIsOne = OPEN_IS_ONE.has(channel) !== (mapping.inverted === true);
  }

  push(cell: string, line: number): void {
    const value = parseDecimal(cell, this.decimal);
    this.numbers.push(value);
    if (Number.isNaN(value)) this.fixLast(cell, line);
  }

  private fixLast(cell: string, line: number): void {
    if (isMissing(cell)) {
      this.missing++;
      return;
    }
    const word = this.takesWords ? switchValue(cell, this.openIsOne) : undefined;
    if (word === undefined) {
      this.unreadable.add(line, cell);
      return;
    }
    this.numbers.replaceLast(word);
  }
}
