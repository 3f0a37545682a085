/** Readings that stand still up to the newest, followed sample by sample: see `../likelihood/freeze-onset.ts`. */
import { FEWEST_FROZEN, FROZEN_SHARE, STILL_PA } from '../likelihood/freeze-onset.ts';

export class StillRun {
  private fromS = 0;
  private count = 0;
  private before = 0;
  private low = 0;
  private high = 0;

  add(timeS: number, gaugePa: number, stepPa: number): void {
    const still = 1.01 * stepPa + STILL_PA;
    if (this.count > 0 && gaugePa - this.low <= still && this.high - gaugePa <= still) {
      this.low = Math.min(this.low, gaugePa);
      this.high = Math.max(this.high, gaugePa);
      this.count++;
      return;
    }
    this.before += this.count;
    this.count = 1;
    this.fromS = timeS;
    this.low = gaugePa;
    this.high = gaugePa;
  }

  /** Time from which the readings stand still though they moved before [s]; undefined if they don't. */
  onsetS(): number | undefined {
    const frozen = this.count;
    return this.before > 2 && frozen >= FROZEN_SHARE * (frozen + this.before) && frozen >= FEWEST_FROZEN
      ? this.fromS
      : undefined;
  }
}
