import type { ColumnMapping } from './mapping.ts';
import { OWN_COLUMNS } from './own-columns.ts';
import { type DecimalMark, isMissing, parseDecimal } from './parse-number.ts';
import { Tally } from './read-report.ts';
import type { ChannelName } from './recording.ts';
import { switchValue } from './switch-words.ts';

const FIRST_CAPACITY = 4096;

/** A growing array of numbers. */
export class GrowingNumbers {
  private data = new Float64Array(FIRST_CAPACITY);
  length = 0;

  push(value: number): void {
    if (this.length === this.data.length) {
      const larger = new Float64Array(this.data.length * 2);
      larger.set(this.data);
      this.data = larger;
    }
    this.data[this.length++] = value;
  }

  values(): Float64Array {
    return this.data.subarray(0, this.length);
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
    this.numbers.length--;
    this.numbers.push(word);
  }
}
