/** Inputs for fuzzing the slcan decoder, and what must hold: exactly the frames that a plain second reading finds. */
import { SlcanDecoder } from '../../src/capture/slcan-codec.ts';
import type { RandomStream } from '../../src/simulation/random.ts';
import { mutated, pick, whole } from './mutate.ts';

const SEEDS = [
  't7E8803410D32AAAAAAAA',
  't7E803410C1',
  't7DF80201000000000000',
  'T18DAF1108064101820765041B',
  'T18DB33F1802010000000000000',
  't7E88044132FE0C000000A1B2',
  't1000',
  't7E89001122334455667788',
  't8002AABB',
  'T200000001AA',
  'r7E88',
  'z',
  'Z',
  '',
  'V0101',
  'F00',
  '\u0007',
] as const;
const CHARACTERS = [...'tTrRzZ0123456789abcdefABCDEFgx \r\n\u0007\u0000\u00ff'];

/** A mutated piece of what an adapter says. */
export function slcanInput(random: RandomStream): string {
  let text = '';
  const lines = 1 + whole(random, 6);
  for (let k = 0; k < lines; k++)
    text += mutated(random, pick(random, SEEDS), CHARACTERS) + pick(random, ['\r', '\r', '\r', '\r\n', '\u0007', '']);
  return text;
}

const BELL = '\u0007';
const LONGEST_LINE = 64;
const FRAME = /^(?:t([0-9a-fA-F]{3})|T([0-9a-fA-F]{8}))([0-8])([\s\S]*)$/;

/** A line's frame by regular expressions over text, as `id data`; nothing when it is no frame. */
function plainFrame(line: string): string | undefined {
  const match = line.length > LONGEST_LINE ? null : FRAME.exec(line);
  if (match === null) return undefined;
  const isExtended = line.startsWith('T');
  const idText = match[1] ?? match[2]!;
  const id = Number.parseInt(idText, 16);
  const digits = 2 * Number(match[3]);
  const rest = match[4]!;
  const isWhole = rest.length === digits || rest.length === digits + 4;
  if (!isWhole || id > (isExtended ? 0x1fffffff : 0x7ff) || !/^[0-9a-f]*$/i.test(rest.slice(0, digits)))
    return undefined;
  return `${isExtended ? 'x' : ''}${id} ${rest.slice(0, digits).toUpperCase()}`;
}

/** What was ended, and by what; what stands behind the last end is not finished. */
function endedLines(text: string): { readonly line: string; readonly isRefused: boolean }[] {
  const ended: { line: string; isRefused: boolean }[] = [];
  const byReturn = text.split('\r');
  byReturn.forEach((part, k) => {
    const byBell = part.split(BELL);
    const isLast = k === byReturn.length - 1;
    byBell.forEach((line, i) => {
      if (i < byBell.length - 1) ended.push({ line, isRefused: true });
      else if (!isLast) ended.push({ line, isRefused: false });
    });
  });
  return ended;
}

export function plainSlcanFrames(text: string): string[] {
  return endedLines(text).flatMap(({ line, isRefused }) => {
    const frame = isRefused ? undefined : plainFrame(line.replace(/^\n+/, ''));
    return frame === undefined ? [] : [frame];
  });
}

/** Runs one input in pieces through the decoder; throws when a rule is broken. */
export function checkSlcan(text: string, random: RandomStream): void {
  const bytes = Buffer.from(text, 'latin1');
  const decoder = new SlcanDecoder();
  const frames: string[] = [];
  let events = 0;
  for (let at = 0; at < bytes.length; ) {
    const to = Math.min(bytes.length, at + 1 + whole(random, 40));
    for (const event of decoder.push(bytes.subarray(at, to))) {
      events++;
      if (event.kind !== 'frame') continue;
      const { id, extended, data } = event.frame;
      frames.push(`${extended ? 'x' : ''}${id} ${Buffer.from(data).toString('hex').toUpperCase()}`);
    }
    at = to;
  }
  const ends = endedLines(text).length;
  if (events !== ends) throw new Error(`${ends} lines ended, ${events} were told of`);
  const expected = plainSlcanFrames(text);
  if (frames.join('\n') !== expected.join('\n'))
    throw new Error(`frames were read otherwise: ${frames.join(', ')}; expected ${expected.join(', ')}`);
}
