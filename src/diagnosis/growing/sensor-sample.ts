/**
 * A bounded selection of raw readings from which the sensor's step and noise are told: blocks of neighbouring samples,
 * spread evenly over the whole recording. When the selection is full every other block goes and the spacing doubles.
 */
import { characterise, type SensorCharacter } from '../likelihood/observations.ts';

const BLOCK = 40;
const MOST_BLOCKS = 24;

interface Block {
  readonly timeS: number[];
  readonly gaugePa: number[];
}

export class SensorSample {
  private blocks: Block[] = [];
  /** Blocks of samples to one that is kept. */
  private spacing = 1;
  private seen = 0;

  add(timeS: number, gaugePa: number): void {
    const block = Math.floor(this.seen / BLOCK);
    const first = this.seen % BLOCK === 0;
    this.seen++;
    if (block % this.spacing !== 0) return;
    if (first) {
      if (this.blocks.length >= MOST_BLOCKS) {
        this.blocks = this.blocks.filter((_, i) => i % 2 === 0);
        this.spacing *= 2;
        if (block % this.spacing !== 0) return;
      }
      this.blocks.push({ timeS: [], gaugePa: [] });
    }
    const open = this.blocks[this.blocks.length - 1];
    // a block whose beginning was not kept has no place
    if (!open || open.timeS.length >= BLOCK) return;
    open.timeS.push(timeS);
    open.gaugePa.push(gaugePa);
  }

  /** @param rails output limits of the sensor [Pa gauge] */
  character(rails: { readonly low: number; readonly high: number }): SensorCharacter {
    const timeS: number[] = [];
    const gaugePa: number[] = [];
    for (const b of this.blocks) {
      timeS.push(...b.timeS, b.timeS[b.timeS.length - 1] ?? 0);
      // what has no value parts the blocks: no difference reaches across
      gaugePa.push(...b.gaugePa, Number.NaN);
    }
    return characterise(Float64Array.from(timeS), Float64Array.from(gaugePa), rails);
  }
}
