/**
 * A recording: channels over one time axis, in SI units.
 *
 * Every channel has as many entries as `timeS`. A sample that the source did not give is NaN, and a
 * channel that the source does not have is absent: nothing is filled in.
 */
export const CHANNELS = {
  tankPressureGaugePa: 'Pa, gauge, positive above ambient',
  tankPressureSensorV: 'V, raw ratiometric sensor output',
  canisterPressureGaugePa: 'Pa, gauge',
  pumpPressureGaugePa: 'Pa, gauge, at the pump module',
  purgeDuty: 'fraction 0..1, commanded',
  ventClosed: '0 or 1, commanded',
  isolationOpen: '0 or 1, commanded',
  pumpOn: '0 or 1, commanded',
  changeoverToTank: '0 or 1, commanded',
  fuelLevel: 'fraction 0..1 of nominal capacity',
  ambientTemperatureK: 'K',
  fuelTemperatureK: 'K',
  coolantTemperatureK: 'K',
  intakeTemperatureK: 'K',
  barometricPa: 'Pa, absolute',
  manifoldAbsPa: 'Pa, absolute',
  engineSpeedRpm: '1/min',
  vehicleSpeedMPerS: 'm/s',
  shortTrim: 'fraction, 0 = no correction, negative = fuel taken away',
  longTrim: 'fraction, as shortTrim',
  fillFlowM3PerS: 'm3/s, liquid dispensed',
} as const;

export type ChannelName = keyof typeof CHANNELS;

export interface Recording {
  /** Seconds from the first sample, strictly increasing. */
  readonly timeS: Float64Array;
  readonly channels: Readonly<Partial<Record<ChannelName, Float64Array>>>;
  /** What a person calls it, usually the file name. */
  readonly label: string;
  /** Facts about the event that no channel carries. */
  readonly notes?: RecordingNotes;
}

/** A stretch in which a valve was shut. */
export interface ShutTime {
  readonly fromS: number;
  /** Absent: shut until the recording ends. */
  readonly toS?: number;
}

/** What the technician wrote down beside the recording. */
export interface RecordingNotes {
  readonly procedure?: ProcedureKind;
  /** Vacuum draw: the gauge pressure at which the module ends the draw, and the longest draw. */
  readonly drawTargetGaugePa?: number;
  readonly drawTimeOutS?: number;
  /** Refuelling: pump rate, the nozzle's shut-off times on the recording's clock, volume delivered. */
  readonly fillFlowM3PerS?: number;
  readonly shutOffTimesS?: readonly number[];
  readonly filledM3?: number;
  /** When the vent valve was shut, on the recording's clock, for recordings without its command. */
  readonly ventShutS?: readonly ShutTime[];
}

export const PROCEDURES = [
  'vacuum-draw',
  'engine-off',
  'purge-drive',
  'refuelling',
  'pump-run',
  'sealed-hold',
] as const;
export type ProcedureKind = (typeof PROCEDURES)[number];

/** The steps of the procedures; which occur in which procedure is listed in `phases.ts`. */
export const PHASES = [
  'baseline', // vent open, no purge, before anything is sealed
  'draw', // vent shut, purge pulling
  'settle', // the first seconds after the purge shut
  'hold', // all shut
  'release', // vent reopened, or purge opened on a pumped tank
  'sealed', // vent shut without a draw: engine off, or the vapour check beside a draw
  'vented', // engine off, vent open
  'purge', // driving, vent open, purge at work
  'idle', // driving, no purge
  'filling', // fuel going in
  'filled', // after the nozzle shut off
  'reference', // pump through its orifice
  'tank-pump', // pump on the tank
  'rest', // anything else
] as const;
export type PhaseKind = (typeof PHASES)[number];

export interface Phase {
  readonly kind: PhaseKind;
  readonly fromS: number;
  readonly toS: number;
}
