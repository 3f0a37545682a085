import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CandumpScanner } from '../../src/recording/bus/candump-scanner.ts';
import { dataItem } from '../../src/recording/bus/data-items.ts';
import { decodeReply, type ReplySink } from '../../src/recording/bus/decode-message.ts';
import { hexText } from '../../src/recording/bus/hex.ts';
import { MessageAssembler } from '../../src/recording/bus/iso-tp.ts';

interface Golden {
  readonly decoder: string;
  readonly messages: readonly { readonly frame: number; readonly id: number; readonly message: string }[];
  readonly values: readonly { readonly frame: number; readonly item: number; readonly value: number }[];
}
const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const golden = (name: string): Golden =>
  JSON.parse(readFileSync(path(`goldens/${name}.tshark.json`), 'utf8')) as Golden;

/** Whole messages and service $01 values of a capture as our reader has them, by number of the frame that completes them. */
function ours(name: string) {
  const assemblers = new Map<number, MessageAssembler>();
  const messages: { frame: number; id: number; message: string }[] = [];
  const values: { frame: number; item: number; si: number }[] = [];
  let frameNumber = 0;
  const sink: ReplySink = {
    item: (item, data, at) =>
      void values.push({ frame: frameNumber, item, si: dataItem(item)?.value(data, at) ?? Number.NaN }),
    supported: () => {},
    monitorStatus: () => {},
    freezeItem: () => {},
    freezeCode: () => {},
    codes: () => {},
    testResults: () => {},
    vin: () => {},
    counters: () => {},
    cleared: () => {},
    negative: () => {},
  };
  const scanner = new CandumpScanner({
    frame: (frame) => {
      frameNumber++;
      const assembler = assemblers.get(frame.id) ?? new MessageAssembler();
      assemblers.set(frame.id, assembler);
      const message = assembler.take(frame);
      if (message === undefined) return;
      messages.push({ frame: frameNumber, id: frame.id, message: hexText(message).toLowerCase() });
      if (frame.id >= 0x7e8) decodeReply(message, sink);
    },
  });
  scanner.push(readFileSync(path(`captures/${name}.log`)));
  scanner.end();
  return { messages, values };
}

/** SI from the unit in which tshark gives an item; written out, not taken from the table under test. */
const PERCENT = new Set([0x04, 0x06, 0x07, 0x11, 0x2e, 0x2f]);
const CELSIUS = new Set([0x05, 0x0f, 0x3c, 0x46]);
const KILO = new Set([0x0b, 0x33, 0x53, 0x21, 0x31]);
function inSi(item: number, value: number): number {
  if (PERCENT.has(item)) return value / 100;
  if (CELSIUS.has(item)) return value + 273.15;
  if (KILO.has(item)) return value * 1000;
  if (item === 0x0d) return value / 3.6;
  if (item === 0x10) return value / 1000;
  // It labels item $32 kPa; SAE J1979 has Pa, and the number is the same.
  return item === 0x4d || item === 0x4e ? value * 60 : value;
}

describe('an independent decoder (tools/tshark-decode.py, Debian tshark)', () => {
  it('puts the same messages together from the capture of published items', () => {
    const theirs = golden('published-items');
    expect(theirs.messages.length).toBeGreaterThan(70);
    expect(ours('published-items').messages).toEqual(theirs.messages);
  });

  it('scales the same values', () => {
    const { values } = ours('published-items');
    const theirs = golden('published-items').values;
    expect(theirs.length).toBeGreaterThan(25);
    for (const { frame, item, value } of theirs) {
      const own = values.find((each) => each.frame === frame && each.item === item);
      expect(own, `item ${item.toString(16)} of frame ${frame}`).toBeDefined();
      expect(own!.si).toBeCloseTo(inSi(item, value), 6);
    }
  });

  it('reads on beyond the first item of an answer, which tshark does not (SAE J1979: up to six items in one request)', () => {
    const several = ours('published-items').messages.find(({ message }) => message.startsWith('4132fe0c2e26'))!;
    expect(
      ours('published-items')
        .values.filter(({ frame }) => frame === several.frame)
        .map(({ item }) => item),
    ).toEqual([0x32, 0x2e, 0x0b, 0x0c, 0x06, 0x0d]);
    expect(golden('published-items').values.filter(({ frame }) => frame === several.frame).length).toBeLessThan(6);
  });

  it('differs on harmed captures only where ISO 15765-2 asks for it', () => {
    const theirs = golden('harmed').messages;
    const own = ours('harmed').messages;
    const key = ({ frame, id }: { frame: number; id: number }): string => `${frame} ${id.toString(16)}`;
    const onlyTheirs = theirs.filter((each) => !own.some((mine) => key(mine) === key(each))).map(key);
    const onlyOurs = own.filter((each) => !theirs.some((their) => key(their) === key(each)));
    // A wrong sequence number ends the reception (N_WRONG_SN), and so does a pause longer than N_Cr: tshark sorts by number
    // and waits for ever.
    expect(onlyTheirs).toEqual(['67 7e8', '71 7e8']);
    // Messages belong together by their address: two units at once are two messages; tshark 4.0 gives both up.
    for (const { id } of onlyOurs) expect([0x7e8, 0x7e9]).toContain(id);
    expect(new Set(onlyOurs.map(({ message }) => message)).size).toBe(2);
    // Round 1 both, round 2 without a frame of the first unit, 3 and 4 without one of the second, 5 both again.
    expect(onlyOurs.map(({ id }) => id.toString(16))).toEqual(['7e8', '7e9', '7e9', '7e8', '7e8', '7e8', '7e9']);
    for (const each of theirs)
      if (own.some((mine) => key(mine) === key(each)))
        expect(own.find((mine) => key(mine) === key(each))!.message).toBe(each.message);
  });
});
