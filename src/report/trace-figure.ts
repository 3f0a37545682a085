/** The recorded pressure with the modelled one laid over it: the picture that proves the sentence. */
import { max, min } from 'd3-array';
import type { Overlay } from '../diagnosis/finding.ts';
import type { Drawing, Mark, Point } from './drawing.ts';
import { fixed } from './numbers.ts';
import { overlayBand, overlayLine, UNITS_PER_DOT } from './overlay-shapes.ts';
import { plotFrame } from './plot-frame.ts';
import { pressureOf, upperFirst } from './pressure-names.ts';
import type { SheetRecording } from './sheet.ts';
import { CAUSE_WORDS, PHASE_WORDS } from './words.ts';

export interface TraceFigure {
  readonly recording: SheetRecording;
  /** The overlay of the first cause. */
  readonly chosen: Overlay;
  /** The overlay to compare with: no fault, or the runner-up when no fault comes first. */
  readonly rival?: Overlay;
  readonly width: number;
}

/** Misfits within this ratio look the same to the eye (judgement). */
const ALIKE = 1.3;

const finite = (values: readonly number[]): number[] => values.filter(Number.isFinite);

export function traceFigure(input: TraceFigure): Drawing {
  const { recording, chosen, rival, width } = input;
  const frame = plotFrame({
    width,
    durationS: recording.durationS,
    phases: recording.phases,
    commands: recording.commands,
    pressuresPa: [...chosen.recordedGaugePa, ...chosen.modelledGaugePa, ...(rival?.modelledGaugePa ?? [])],
  });
  const every = Math.max(1, Math.ceil(chosen.timeS.length / ((frame.right - frame.left) / UNITS_PER_DOT)));
  const dots = chosen.timeS
    .map((t, i): Point => [frame.xAt(t), frame.yAt(chosen.recordedGaugePa[i] ?? Number.NaN)])
    .filter((point, i) => i % every === 0 && Number.isFinite(point[1]));
  const marks: Mark[] = [...frame.under];
  if (rival !== undefined) {
    marks.push(
      { kind: 'area', pen: 'rival-band', points: overlayBand(rival, frame) },
      { kind: 'line', pen: 'rival', points: overlayLine(rival, frame) },
    );
  }
  marks.push(
    { kind: 'area', pen: 'band', points: overlayBand(chosen, frame) },
    { kind: 'line', pen: 'model', points: overlayLine(chosen, frame) },
    { kind: 'dots', pen: 'recorded', radius: 1.3, points: dots },
    ...frame.over,
  );
  return {
    width,
    height: frame.height,
    title: `${upperFirst(pressureOf(recording.procedure))}, recorded and modelled: ${recording.label}`,
    description: describe(input, dots.length),
    marks,
  };
}

function describe({ recording, chosen, rival }: TraceFigure, dots: number): string {
  const samplesPerDot = Math.round(recording.samples / Math.max(1, dots));
  const recorded = finite(chosen.recordedGaugePa);
  const errors = finite(chosen.recordedGaugePa.map((pa, i) => pa - (chosen.modelledGaugePa[i] ?? Number.NaN)));
  const typical = (values: readonly number[]): number =>
    Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
  const phases = recording.phases.map(
    (phase) => `${PHASE_WORDS[phase.kind]} ${Math.round(phase.fromS)} to ${Math.round(phase.toS)} s`,
  );
  const rivalErrors = finite(
    (rival?.recordedGaugePa ?? []).map((pa, i) => pa - (rival?.modelledGaugePa[i] ?? Number.NaN)),
  );
  return [
    `Recorded ${pressureOf(recording.procedure)} (gauge) over ${Math.round(recording.durationS)} s, from ${fixed((min(recorded) ?? 0) / 1000, 2)} to ${fixed((max(recorded) ?? 0) / 1000, 2)} kPa.`,
    phases.length > 0 ? `Phases: ${phases.join(', ')}.` : '',
    `The model with "${CAUSE_WORDS[chosen.cause].name}" differs from the record by ${fixed(typical(errors), 0)} Pa (root mean square).`,
    rival === undefined ? '' : describeRival(rival, typical(errors), typical(rivalErrors)),
    rival !== undefined && isHidden(chosen, rival) ? 'The dashed line lies under the first and cannot be seen.' : '',
    samplesPerDot > 1 ? `Each dot stands for about ${samplesPerDot} samples.` : 'Every sample is drawn.',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** Lines nowhere further apart than this share of the recorded span lie on each other (about a line's width). */
const HIDDEN = 0.015;

export function isHidden(chosen: Overlay, rival: Overlay): boolean {
  const recorded = finite(chosen.recordedGaugePa);
  const span = (max(recorded) ?? 0) - (min(recorded) ?? 0);
  const apart = chosen.modelledGaugePa.map((pa, i) => Math.abs(pa - (rival.modelledGaugePa[i] ?? Number.NaN)));
  const seen = finite(apart);
  return seen.length > 0 && (max(seen) ?? 0) <= HIDDEN * span;
}

/** A rival that follows the record as well is beaten by what it would ask of the rest, and that must be said. */
function describeRival(rival: Overlay, chosenPa: number, rivalPa: number): string {
  const name = CAUSE_WORDS[rival.cause].name;
  const differs = `With "${name}" it differs by ${fixed(rivalPa, 0)} Pa.`;
  if (rivalPa > ALIKE * chosenPa) return differs;
  return `${differs} Both follow the record; they part by how plausible the fuel, the volumes and the sensor would have to be.`;
}
