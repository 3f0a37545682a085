/** A screenshot as a PNG with a palette: our pages are flat paper and ink, for which 256 colours are enough. */
import { deflateSync, inflateSync } from 'node:zlib';

interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green and blue of one pixel after the other. */
  readonly rgb: Uint8Array;
}

const SIGNATURE = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
const MOST_COLOURS = 256;

/** What the PNG standard calls the Paeth predictor. */
function paeth(left: number, above: number, corner: number): number {
  const guess = left + above - corner;
  const [fromLeft, fromAbove, fromCorner] = [left, above, corner].map((value) => Math.abs(guess - value)) as [
    number,
    number,
    number,
  ];
  if (fromLeft <= fromAbove && fromLeft <= fromCorner) return left;
  return fromAbove <= fromCorner ? above : corner;
}

/** Reads what the browser writes: eight bits a channel, colour with or without alpha, not interlaced. */
function readPng(bytes: Buffer): Pixels {
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const kind = [bytes[24], bytes[25], bytes[28]].join();
  if (kind !== '8,2,0' && kind !== '8,6,0') throw new Error(`PNG of kind ${kind} found, 8,2,0 or 8,6,0 expected`);
  const channels = kind === '8,6,0' ? 4 : 3;
  const parts: Buffer[] = [];
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + length));
    at += length + 12;
  }
  const packed = inflateSync(Buffer.concat(parts));
  const row = width * channels;
  const plain = new Uint8Array(row * height);
  for (let y = 0; y < height; y++) {
    const filter = packed[y * (row + 1)] ?? 0;
    for (let x = 0; x < row; x++) {
      const at = y * row + x;
      const left = x >= channels ? plain[at - channels]! : 0;
      const above = y > 0 ? plain[at - row]! : 0;
      const corner = y > 0 && x >= channels ? plain[at - row - channels]! : 0;
      const added = [0, left, above, (left + above) >> 1, paeth(left, above, corner)][filter] ?? 0;
      plain[at] = packed[y * (row + 1) + 1 + x]! + added;
    }
  }
  if (channels === 3) return { width, height, rgb: plain };
  return { width, height, rgb: plain.filter((_, i) => i % 4 !== 3) };
}

const channelOf = (colour: number, channel: number): number => (colour >> (16 - 8 * channel)) & 255;

interface Box {
  readonly colours: readonly number[];
  readonly channel: number;
  /** How much there is to win by parting it: its spread, weighed by how often its colours occur. */
  readonly worth: number;
}

function boxOf(colours: readonly number[], counts: ReadonlyMap<number, number>): Box {
  let widest = { channel: 0, spread: 0 };
  for (const channel of [0, 1, 2]) {
    const values = colours.map((colour) => channelOf(colour, channel));
    const spread = values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b));
    if (spread > widest.spread) widest = { channel, spread };
  }
  const often = colours.reduce((sum, colour) => sum + (counts.get(colour) ?? 0), 0);
  return { colours, channel: widest.channel, worth: widest.spread ** 2 * Math.sqrt(often) };
}

/** Median cut; each box is shown by its most frequent colour, so that paper and ink stay exact. */
function paletteOf(counts: ReadonlyMap<number, number>): readonly number[] {
  const boxes = [boxOf([...counts.keys()], counts)];
  while (boxes.length < MOST_COLOURS) {
    const best = boxes.reduce((a, b) => (b.worth > a.worth ? b : a));
    if (best.worth === 0) break;
    const sorted = [...best.colours].sort((a, b) => channelOf(a, best.channel) - channelOf(b, best.channel) || a - b);
    const middle = sorted.length >> 1;
    boxes.splice(boxes.indexOf(best), 1, boxOf(sorted.slice(0, middle), counts), boxOf(sorted.slice(middle), counts));
  }
  return boxes.map(({ colours }) => colours.reduce((a, b) => (counts.get(b)! > counts.get(a)! ? b : a)));
}

function nearest(colour: number, palette: readonly number[]): number {
  let best = { index: 0, distance: Number.POSITIVE_INFINITY };
  for (const [index, other] of palette.entries()) {
    const distance = [0, 1, 2].reduce((sum, c) => sum + (channelOf(colour, c) - channelOf(other, c)) ** 2, 0);
    if (distance < best.distance) best = { index, distance };
  }
  return best.index;
}

/** One byte's turn of the CRC-32 that PNG asks for (polynomial 0xEDB88320, reflected); older Node 20 has none of its own. */
const CRC_TURNS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let turned = byte;
  for (let bit = 0; bit < 8; bit++) turned = turned & 1 ? 0xedb88320 ^ (turned >>> 1) : turned >>> 1;
  return turned;
});

export const crc32 = (bytes: Uint8Array): number =>
  ~bytes.reduce((crc, byte) => CRC_TURNS[(crc ^ byte) & 255]! ^ (crc >>> 8), 0xffffffff) >>> 0;

function chunk(name: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const framed = Buffer.alloc(named.length + 8);
  framed.writeUInt32BE(data.length, 0);
  named.copy(framed, 4);
  framed.writeUInt32BE(crc32(named), named.length + 4);
  return framed;
}

export function smallPng(screenshot: Buffer): Buffer {
  const { width, height, rgb } = readPng(screenshot);
  const colours = new Uint32Array(width * height);
  const counts = new Map<number, number>();
  for (let i = 0; i < colours.length; i++) {
    const colour = (rgb[3 * i]! << 16) | (rgb[3 * i + 1]! << 8) | rgb[3 * i + 2]!;
    colours[i] = colour;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  const palette = paletteOf(counts);
  const indexOf = new Map([...counts.keys()].map((colour) => [colour, nearest(colour, palette)]));
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = indexOf.get(colours[y * width + x]!)!;
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  // Eight bits a pixel, with a palette, not interlaced.
  head.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', head),
    chunk('PLTE', Uint8Array.from(palette.flatMap((colour) => [0, 1, 2].map((c) => channelOf(colour, c))))),
    chunk('IDAT', deflateSync(rows, { level: 9, memLevel: 9 })),
    chunk('IEND', new Uint8Array()),
  ]);
}
