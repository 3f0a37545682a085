/** Every word of the readiness room in one language. A further language is files that fill this type and a line in `languages.ts`. */
import type { MonitorName } from '../../recording/bus/monitor-status.ts';
import type { ChannelName } from '../../recording/recording.ts';
import type { ConditionResult } from '../condition-result.ts';
import type { Condition } from '../conditions.ts';
import type { EngineOffOutlook } from '../engine-off-result.ts';
import type { ForecastWanted } from '../forecast.ts';
import type { Counted, InUseRatio } from '../in-use-ratio.ts';
import type { InspectionGap, InspectionReason, InspectionRule, InspectionVerdict } from '../inspection.ts';
import type { Avoidance, PlanRemark } from '../plan.ts';
import type { PlanNote } from '../plan-chances.ts';
import type { PatternStep } from '../route-pattern.ts';
import type { ReadinessFigures } from './figures.ts';

type Said<T> = (what: T, figures: ReadinessFigures) => string;

export interface ConditionWords {
  readonly channel: (channel: ChannelName) => string;
  /** The conditions that ship by name; any other id as it stands. */
  readonly condition: (id: string) => string;
  /** Where a figure comes from; marks of what ships in the language, others as they stand. */
  readonly mark: (mark: string) => string;
  /** What is asked for. */
  readonly wanted: Said<Condition>;
  /** What was found. */
  readonly found: Said<ConditionResult>;
}

export interface PlanWords {
  /** What a line of a forecast should have been. */
  readonly forecastWanted: (wanted: ForecastWanted) => string;
  readonly step: Said<PatternStep>;
  readonly note: Said<PlanNote>;
  readonly remark: Said<PlanRemark>;
  readonly avoid: Said<Avoidance>;
  readonly outlook: Said<EngineOffOutlook>;
  readonly noHole: string;
  /** Why little is decided by a hole's size alone. */
  readonly plateau: string;
}

export interface InspectionWords {
  readonly monitors: Readonly<Record<MonitorName, string>>;
  /** Monitors of service $06 by their number; undefined: not of the evaporative system. */
  readonly testMonitor: (monitorId: number) => string | undefined;
  readonly verdict: Readonly<Record<InspectionVerdict, string>>;
  readonly reason: Said<InspectionReason>;
  readonly gap: (gap: InspectionGap) => string;
  readonly missing: (what: string) => string;
  readonly ratio: Said<InUseRatio>;
  readonly counted: Readonly<Record<Counted, string>>;
  /** A ratio whose denominator is zero. */
  readonly noData: string;
  readonly rule: (rule: InspectionRule) => { readonly name: string; readonly source: string };
  readonly ruleMark: Readonly<Record<InspectionRule['mark'], string>>;
  readonly ruleLine: (name: string, asOf: string, mark: string, source: string) => string;
  readonly slip: Readonly<
    Record<
      | 'confirmed'
      | 'pending'
      | 'permanent'
      | 'lamp'
      | 'run'
      | 'notRun'
      | 'warmUps'
      | 'distance'
      | 'time'
      | 'distanceWithLamp'
      | 'timeWithLamp'
      | 'thisDrive'
      | 'inUse'
      | 'rule'
      | 'byRule',
      string
    >
  >;
  readonly notRead: string;
  readonly none: string;
  readonly orMore: (count: number) => string;
  readonly lampOn: string;
  readonly lampOff: string;
  /** Evaporative monitor in this drive cycle (item $41). */
  readonly thisDrive: Readonly<Record<'run' | 'not-run' | 'not-enabled', string>>;
  /** Always shown with a verdict, a plan or a condition. */
  readonly caution: string;
}

export type ReadinessWords = ConditionWords & PlanWords & InspectionWords;
