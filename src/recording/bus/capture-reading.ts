import type { Quality } from '../quality.ts';
import type { ChannelName, Recording } from '../recording.ts';
import type { LineReason } from './capture-counts.ts';
import type { MessageReason } from './decode-message.ts';
import type { TransportCounts } from './iso-tp.ts';
import type { MonitorStatus } from './monitor-status.ts';
import type { StampMeaning } from './stamps.ts';
import type { TestResult } from './test-results.ts';
import type { CodeStatus } from './trouble-codes.ts';
import type { InUseCounters } from './vehicle-information.ts';
import type { WideGaugeDecision } from './wide-gauge.ts';

export interface ReadCode {
  readonly code: string;
  readonly status: CodeStatus;
  /** Identifier that the unit replies under, as 7E8. */
  readonly unit: string;
}

export interface ReadFreezeFrame {
  readonly unit: string;
  readonly number: number;
  readonly code?: string;
  readonly items: readonly {
    readonly id: number;
    readonly name: string;
    readonly value: number;
    readonly unit: string;
  }[];
}

/** How the readiness of a car stands by its own word; absent what it was not asked for. */
export interface CarStatus {
  readonly sinceClear?: MonitorStatus;
  readonly thisDrive?: MonitorStatus;
  readonly warmUpsSinceClear?: number;
  readonly distanceSinceClearM?: number;
  readonly distanceWithLampM?: number;
  readonly timeWithLampS?: number;
  readonly timeSinceClearS?: number;
  readonly inUse?: InUseCounters;
  readonly vin?: string;
}

export interface UnitReading {
  /** As 7E8. */
  readonly unit: string;
  /** Items of service $01 that it says it has. */
  readonly supportedItems: readonly number[];
  readonly status: CarStatus;
  readonly results: readonly TestResult[];
  readonly negatives: readonly { readonly service: number; readonly reason: string; readonly count: number }[];
  readonly transport: TransportCounts;
  readonly unread: readonly { readonly reason: MessageReason; readonly count: number }[];
  /** From request to the first frame of the answer, s; absent when no request was on the record. */
  readonly replyTimes?: { readonly count: number; readonly meanS: number; readonly longestS: number };
}

export interface CaptureReport {
  readonly fileName: string;
  readonly bytes: number;
  readonly lines: number;
  readonly frames: number;
  readonly diagnosticFrames: number;
  readonly requests: number;
  readonly skipped: readonly {
    readonly reason: LineReason;
    readonly count: number;
    readonly firstLines: readonly number[];
    readonly example?: string;
  }[];
  readonly stamps: StampMeaning;
  /** Stamp of the first diagnostic frame on the capture's clock, s; since 1970 where the stamps are. */
  readonly firstTimeS?: number;
  readonly pauses: readonly { readonly fromS: number; readonly toS: number }[];
  readonly items: readonly {
    readonly id: number;
    readonly name: string;
    readonly unit: string;
    readonly samples: number;
    readonly channel?: ChannelName;
  }[];
  readonly backwardSamples: number;
  readonly samplesBeyondLimit: number;
  readonly largestShiftS: number;
  readonly mergedSamples: number;
  readonly warnings: readonly string[];
}

/** All that a capture holds for this tool. */
export interface CaptureReading {
  /** Absent where there is nothing that has a channel, or no time stamp. */
  readonly recording?: Recording;
  readonly quality?: Quality;
  readonly units: readonly UnitReading[];
  readonly codes: readonly ReadCode[];
  /** Lists that the car was asked for and gave, empty or not. */
  readonly codesRead: readonly CodeStatus[];
  readonly freezeFrames: readonly ReadFreezeFrame[];
  /** Put together over all units; of the unit that has the evaporative monitor where units differ. */
  readonly status: CarStatus;
  readonly results: readonly TestResult[];
  readonly wideGauge?: WideGaugeDecision;
  readonly report: CaptureReport;
}
