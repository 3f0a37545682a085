import { addressRole, replyId } from './address.ts';
import { ControlUnit } from './control-unit.ts';
import type { CanFrame } from './frame.ts';

export interface BusLogOptions {
  /** Most samples that are kept, over all items; what comes after is counted. */
  readonly mostSamples?: number;
  /** Told of every sample as it comes; for live recordings. */
  readonly onItem?: (unit: ControlUnit, id: number, timeS: number, value: number) => void;
}

/** 16 bytes each: 64 MB, some fifty hours of six items at four times a second (judgement). */
const MOST_SAMPLES = 4_000_000;

/** A stretch in which the capture has nothing because the adapter was away. */
export interface Pause {
  readonly fromS: number;
  readonly toS: number;
}

/** Sorts diagnostic frames to the control units that they belong to. */
export class BusLog {
  readonly units = new Map<number, ControlUnit>();
  readonly pauses: Pause[] = [];
  frames = 0;
  requests = 0;
  /** Samples that were read and not kept, as there were more than may be. */
  beyondLimit = 0;
  firstS: number | undefined;
  lastS: number | undefined;
  private readonly options: BusLogOptions;
  private readonly mostSamples: number;
  private kept = 0;
  private functionalS: number | undefined;
  private pausedS: number | undefined;

  constructor(options: BusLogOptions = {}) {
    this.options = options;
    this.mostSamples = options.mostSamples ?? MOST_SAMPLES;
  }

  take(frame: CanFrame): void {
    const { id, extended, timeS } = frame;
    this.frames++;
    if (timeS !== undefined) {
      this.firstS ??= timeS;
      this.lastS = timeS;
    }
    const role = addressRole(id, extended);
    if (role === 'reply') {
      this.unit(id, extended).reply(frame);
      return;
    }
    const isFlowControl = frame.length > 0 && frame.data[0]! >> 4 === 3;
    if (!isFlowControl) this.requests++;
    if (role === 'functional-request') {
      this.functionalS = timeS;
      for (const unit of this.units.values()) if (unit.extended === extended) unit.asked(frame);
      return;
    }
    this.unit(replyId(id, extended), extended).asked(frame);
  }

  /** The adapter went away: what was being put together is not completed across the pause. */
  pauseBegins(timeS: number | undefined): void {
    for (const unit of this.units.values()) unit.assembler.end();
    this.pausedS ??= timeS;
  }

  pauseEnds(timeS: number | undefined): void {
    if (this.pausedS !== undefined && timeS !== undefined && timeS > this.pausedS)
      this.pauses.push({ fromS: this.pausedS, toS: timeS });
    this.pausedS = undefined;
  }

  end(): void {
    for (const unit of this.units.values()) unit.assembler.end();
  }

  private unit(id: number, extended: boolean): ControlUnit {
    let unit = this.units.get(id);
    if (unit === undefined) {
      unit = new ControlUnit(
        id,
        extended,
        () => {
          if (this.kept < this.mostSamples) {
            this.kept++;
            return true;
          }
          this.beyondLimit++;
          return false;
        },
        this.options.onItem,
      );
      unit.askedAt(this.functionalS);
      this.units.set(id, unit);
    }
    return unit;
  }
}
