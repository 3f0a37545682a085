import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { MOST_PICTURES, picturesOf } from './pictures.ts';

const folder = mkdtempSync(join(tmpdir(), 'pictures-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string): string => join(folder, name);

/** Left half red, right half blue. */
const halves = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#0000ff' } }).composite([
    { input: { create: { width: width / 2, height, channels: 3, background: '#ff0000' } }, left: 0, top: 0 },
  ]);

beforeAll(async () => {
  // As a telephone held upright writes it: lying, with a note that it is to be turned a quarter (EXIF orientation 6).
  await halves(3000, 2000)
    .withMetadata({
      orientation: 6,
      exif: { IFD0: { Artist: 'invented owner' }, IFD3: { GPSLatitude: '52/1 30/1 0/1' } },
    })
    .jpeg()
    .toFile(at('telephone.jpg'));
  await sharp({ create: { width: 40, height: 20, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } })
    .png()
    .toFile(at('clear.png'));
  writeFileSync(at('broken.jpg'), Buffer.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]));
});

const one = async (name: string) => (await picturesOf([{ id: 'a', path: at(name) }])).get('a');

describe('a photo from a telephone', () => {
  test('stands upright and is no larger than print shows', async () => {
    const picture = (await one('telephone.jpg'))!;
    expect([picture.widthPx, picture.heightPx]).toEqual([667, 1000]);
    const { data } = await sharp(picture.bytes).raw().toBuffer({ resolveWithObject: true });
    // Turned by a quarter to the right, what was left is on top.
    expect(data[0]).toBeGreaterThan(200);
    expect(data[data.length - 1]).toBeGreaterThan(200);
    expect(picture.bytes.length).toBeLessThan(200_000);
  });

  test('carries neither place nor owner', async () => {
    const { bytes } = (await one('telephone.jpg'))!;
    expect((await sharp(at('telephone.jpg')).metadata()).exif).toBeDefined();
    expect((await sharp(bytes).metadata()).exif).toBeUndefined();
    expect(Buffer.from(bytes).toString('latin1')).not.toContain('invented owner');
  });
});

test('a small picture is not blown up, and what is clear becomes paper', async () => {
  const picture = (await one('clear.png'))!;
  expect([picture.widthPx, picture.heightPx]).toEqual([40, 20]);
  const data = await sharp(picture.bytes).raw().toBuffer();
  expect(Math.min(...data)).toBeGreaterThan(250);
});

test('a damaged file is left out and stops nothing', async () => {
  const pictures = await picturesOf([
    { id: 'bad', path: at('broken.jpg') },
    { id: 'gone', path: at('nowhere.jpg') },
    { id: 'good', path: at('clear.png') },
  ]);
  expect([...pictures.keys()]).toEqual(['good']);
});

test('a document holds a number of pictures, not all that there may be', async () => {
  const many = Array.from({ length: MOST_PICTURES + 5 }, (_, i) => ({ id: String(i), path: at('clear.png') }));
  expect((await picturesOf(many)).size).toBe(MOST_PICTURES);
});
