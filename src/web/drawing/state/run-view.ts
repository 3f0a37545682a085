import type { CommandId, Network, Passage } from '../../../system/network.ts';
import type { PlayedRun } from '../../simulation/played-run.ts';

/** A run with the network that made it, read at any time. */
export class RunView {
  readonly run: PlayedRun;
  readonly network: Network;
  /** The same car without its fault: what "open" means. */
  readonly sound: Network;
  /** The faulty car without what merely chokes the line that a valve sits in: what a valve itself does. */
  readonly valves: Network;
  private index = 0;
  private share = 0;
  private atS = Number.NaN;
  private readonly passages = new Map<string, Passage>();

  constructor(run: PlayedRun, network: Network, sound: Network, valves: Network = network) {
    this.run = run;
    this.network = network;
    this.sound = sound;
    this.valves = valves;
    for (const passage of network.passages) this.passages.set(passage.id, passage);
  }

  passage(id: string): Passage | undefined {
    return this.passages.get(id);
  }

  /** Sets the time that `value` and the others read at; beyond the end the last sample stays. */
  moveTo(timeS: number): void {
    if (timeS === this.atS) return;
    this.atS = timeS;
    const t = this.run.timeS;
    let low = 0;
    let high = t.length - 1;
    if (high < 1 || timeS <= t[0]!) {
      this.index = 0;
      this.share = 0;
      return;
    }
    if (timeS >= t[high]!) {
      this.index = high - 1;
      this.share = 1;
      return;
    }
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (t[middle]! <= timeS) low = middle;
      else high = middle;
    }
    this.index = low;
    this.share = (timeS - t[low]!) / (t[low + 1]! - t[low]!);
  }

  get timeS(): number {
    return this.atS;
  }

  private read(values: Float32Array | Float64Array | undefined): number | undefined {
    if (values === undefined || values.length === 0) return undefined;
    const a = values[this.index]!;
    const b = values[this.index + 1] ?? a;
    return a + this.share * (b - a);
  }

  /** A traced quantity; absent where the network does not have it. */
  value(name: string): number | undefined {
    return this.read(this.run.traces[name]);
  }

  flowKgPerS(passage: string): number {
    return this.value(`${passage}.flowKgPerS`) ?? 0;
  }

  passedKg(passage: string): number {
    return this.read(this.run.passedKg[passage]) ?? 0;
  }

  reading(sensor: string): number | undefined {
    return this.read(this.run.readings[sensor]);
  }

  gaugePa(space: string): number | undefined {
    return space === 'ambient' ? 0 : this.value(`${space}.gaugePa`);
  }

  command(id: CommandId): number {
    const { commandTimesS, commands } = this.run;
    let k = commandTimesS.length - 1;
    while (k > 0 && commandTimesS[k]! > this.atS) k--;
    return commands[k]?.[id] ?? 0;
  }

  /** Index of the step that is going on. */
  step(): number {
    const { steps } = this.run;
    const k = steps.findIndex((s) => this.atS < s.toS);
    return k < 0 ? steps.length - 1 : k;
  }
}
