import { describe, expect, it } from 'vitest';
import { airyRange, type Lane, laneTicks, numberText, placeLanes } from './lanes.ts';

const lane = (size: Lane['size']): Lane => ({
  id: size,
  title: 'tank pressure',
  shown: { unit: 'kPa', factor: 1000, offset: 0, decimals: 2 },
  range: [-2600, 150],
  layers: [],
  size,
});

describe('lanes', () => {
  it.each([390, 1280])('lie under each other without touching at %i px', (width) => {
    const { lanes, height } = placeLanes([lane('tall'), lane('low'), lane('switch')], width);
    for (let k = 1; k < lanes.length; k++) {
      const above = lanes[k - 1]!;
      expect(lanes[k]!.titleY ?? lanes[k]!.top).toBeGreaterThan(above.top + above.height);
    }
    expect(lanes.at(-1)!.top + lanes.at(-1)!.height).toBeLessThan(height);
  });

  it('marks round numbers of the unit shown', () => {
    expect(laneTicks(lane('tall')).map(({ text }) => text)).toEqual(['\u22122', '\u22121', '0']);
    const water = { ...lane('tall'), shown: { unit: 'inH2O', factor: 249.08891, offset: 0, decimals: 2 } };
    expect(laneTicks(water).map(({ si }) => Math.round(si))).toEqual([-2491, -1245, 0]);
  });

  it('gives a flat line a height', () => {
    const [low, high] = airyRange(5, 5, 2);
    expect(high - low).toBeGreaterThanOrEqual(2);
    expect(numberText(-0.001, 2)).toBe('0.00');
  });
});
