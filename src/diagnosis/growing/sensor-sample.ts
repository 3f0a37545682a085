/**
 * A bounded selection of raw readings from which the sensor's step and noise are told: blocks of neighbouring samples,
 * spread evenly over the whole recording. When the selection is full every other block goes and the spacing doubles.
 */
import { FINE_SHARE } from '../single-run/observed-channel.ts';

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

  /** The selection, its blocks parted by readings without a value, so that no difference reaches across. */
  readings(): { readonly timeS: Float64Array; readonly gaugePa: Float64Array } {
    const timeS: number[] = [];
    const gaugePa: number[] = [];
    for (const b of this.blocks) {
      timeS.push(...b.timeS, b.timeS[b.timeS.length - 1] ?? 0);
      gaugePa.push(...b.gaugePa, Number.NaN);
    }
    return { timeS: Float64Array.from(timeS), gaugePa: Float64Array.from(gaugePa) };
  }

  /** Whether few readings repeat a value: only then is an extreme that repeats a rail and not a step. */
  isFine(): boolean {
    const all = this.blocks.flatMap((b) => b.gaugePa);
    return new Set(all).size > FINE_SHARE * all.length;
  }
}
