import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyFrame } from '../../src/recording/bus/frame.ts';
import { MessageAssembler, separationTimeS } from '../../src/recording/bus/iso-tp.ts';
import { CaptureReader } from '../../src/recording/bus/read-capture.ts';
import { continueFrame, segmentMessage } from '../../src/recording/bus/segment-message.ts';
import { readCodes, troubleCode, troubleCodeBytes } from '../../src/recording/bus/trouble-codes.ts';

const frame = (data: Uint8Array, timeS: number, id = 0x7e8) => {
  const made = emptyFrame();
  made.id = id;
  made.timeS = timeS;
  made.length = data.length;
  made.data.set(data);
  return made;
};
const message = fc.uint8Array({ minLength: 1, maxLength: 400 });

describe('ISO 15765-2 reassembly', () => {
  it('what was parted comes back whole, at any length', () => {
    fc.assert(
      fc.property(message, (sent) => {
        const assembler = new MessageAssembler();
        const came = segmentMessage(sent).flatMap((data, i) => {
          const whole = assembler.take(frame(data, 0.01 * i));
          return whole === undefined ? [] : [whole.slice()];
        });
        expect(came).toEqual([sent]);
        expect(assembler.counts.incomplete).toBe(0);
      }),
    );
    expect(segmentMessage(new Uint8Array(4095)).length).toBe(1 + Math.ceil(4089 / 7));
  });

  it('two units that talk at once do not mix', () => {
    fc.assert(
      fc.property(message, message, fc.array(fc.boolean(), { maxLength: 200 }), (a, b, order) => {
        const queues = [segmentMessage(a), segmentMessage(b)];
        const assemblers = [new MessageAssembler(), new MessageAssembler()];
        const came: (Uint8Array | undefined)[] = [undefined, undefined];
        for (let k = 0; queues[0]!.length + queues[1]!.length > 0; k++) {
          const wanted = order[k] === true ? 1 : 0;
          const who = queues[wanted]!.length > 0 ? wanted : 1 - wanted;
          const whole = assemblers[who]!.take(frame(queues[who]!.shift()!, 0.001 * k));
          if (whole !== undefined) came[who] = whole.slice();
        }
        expect(came).toEqual([a, b]);
      }),
    );
  });

  it('frames that are lost, doubled or swapped never make a wrong message: it is whole, or counted as missing', () => {
    // Messages carry their own number in every byte, as no two answers on a bus are alike in all.
    const scenario = fc.record({
      lengths: fc.array(fc.integer({ min: 1, max: 120 }), { minLength: 1, maxLength: 12 }),
      harm: fc.array(fc.constantFrom('keep', 'keep', 'keep', 'lose', 'double', 'swap'), {
        minLength: 30,
        maxLength: 300,
      }),
    });
    fc.assert(
      fc.property(scenario, ({ lengths, harm }) => {
        const assembler = new MessageAssembler();
        const sent = lengths.map((length, k) => new Uint8Array(length).fill(k + 1));
        const frames: { data: Uint8Array; timeS: number }[] = [];
        let timeS = 0;
        for (const each of sent) {
          for (const data of segmentMessage(each)) {
            timeS += 0.001;
            frames.push({ data, timeS });
          }
          // The next answer comes after a request, later than the longest wait within a message.
          timeS += 0.2;
        }
        const arrived: typeof frames = [];
        let lost = 0;
        frames.forEach((each, i) => {
          const what = harm[i % harm.length]!;
          if (what === 'lose') lost++;
          else arrived.push(each);
          if (what === 'double') arrived.push(each);
          if (what === 'swap' && arrived.length > 1) arrived.push(...arrived.splice(-2).reverse());
        });
        const came = arrived.flatMap(({ data, timeS: at }) => {
          const whole = assembler.take(frame(data, at));
          return whole === undefined ? [] : [whole.slice()];
        });
        assembler.end();
        for (const each of came)
          expect(sent.some((one) => one.length === each.length && one[0] === each[0])).toBe(true);
        for (const each of came) expect(new Set(each).size).toBe(1);
        const { anomalies, incomplete } = assembler.counts;
        const counted = Object.values(anomalies).reduce((sum, count) => sum + count, 0);
        const distinct = new Set(came.map((each) => each[0])).size;
        // A single frame that is lost leaves no trace; every other gap is counted.
        if (distinct < sent.length) expect(counted + incomplete + lost).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it('tells what is wrong', () => {
    const parts = segmentMessage(Uint8Array.from({ length: 30 }, (_, i) => i));
    const run = (...order: readonly (readonly [index: number, timeS: number])[]) => {
      const assembler = new MessageAssembler();
      for (const [index, timeS] of order) assembler.take(frame(parts[index]!, timeS));
      assembler.end();
      return assembler.counts;
    };
    expect(run([0, 0], [1, 0.01], [3, 0.02]).anomalies.lost).toBe(1);
    expect(run([0, 0], [1, 0.01], [1, 0.011], [2, 0.02], [3, 0.03], [4, 0.04]).anomalies.repeated).toBe(1);
    expect(run([0, 0], [2, 0.01], [1, 0.02]).anomalies['out-of-order']).toBe(1);
    expect(run([1, 0]).anomalies.orphan).toBe(1);
    expect(run([0, 0], [0, 0.01]).anomalies.interrupted).toBe(1);
    expect(run([0, 0], [1, 1]).anomalies['timed-out']).toBe(1);
    expect(run([0, 0], [1, 0.01]).incomplete).toBe(1);
    const assembler = new MessageAssembler();
    for (const bytes of [[0x00], [0x08, 1, 2, 3, 4, 5, 6, 7], [0x05, 1, 2], [0x10, 0x05, 1, 2, 3, 4, 5, 6]])
      assembler.take(frame(Uint8Array.from(bytes), 0));
    expect(assembler.counts.anomalies['wrong-length']).toBe(4);
    assembler.take(frame(Uint8Array.from([0x40, 0]), 0));
    expect(assembler.counts.anomalies['unknown-kind']).toBe(1);
    assembler.take(frame(parts[0]!, 0));
    assembler.peerFrame('flow-control', Uint8Array.from([0x32, 0, 0]));
    expect(assembler.counts.anomalies['refused-by-receiver']).toBe(1);
  });

  it('separation times: 00 to 7F ms, F1 to F9 hundreds of microseconds, anything else as 7F (open implementations)', () => {
    expect([0x00, 0x14, 0x7f, 0xf1, 0xf9, 0x80, 0xf0, 0xfa].map(separationTimeS)).toEqual([
      0, 0.02, 0.127, 0.0001, 0.0009, 0.127, 0.127, 0.127,
    ]);
    expect([...continueFrame().subarray(0, 3)]).toEqual([0x30, 0, 0]);
  });

  it('a flexible-data-rate frame carries a longer single message', () => {
    const reader = new CaptureReader({ fileName: 'fd' });
    const data = '000B4132FE0C0C0BB82E260D28000000';
    reader.push(new TextEncoder().encode(`(1.000000) can0 7E8##1${data}\n(2.000000) can0 7E8##1${data}\n`));
    const { recording } = reader.finish();
    expect(recording?.channels.tankPressureGaugePa?.[1]).toBe(-125);
    expect(recording?.channels.engineSpeedRpm?.[1]).toBe(750);
  });
});

describe('trouble codes', () => {
  it('bytes and text are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffff }), (code) => {
        const text = troubleCode(code >> 8, code & 0xff);
        expect(text).toMatch(/^[PCBU][0-3][0-9A-F]{3}$/);
        expect(troubleCodeBytes(text)).toEqual([code >> 8, code & 0xff]);
      }),
    );
  });
  it('a count that does not fit is no list', () => {
    expect(readCodes(Uint8Array.from([0x43, 2, 0x04, 0x42]))).toBeUndefined();
    expect(readCodes(Uint8Array.from([0x43, 0, 0x04, 0x42]))).toBeUndefined();
  });
});
