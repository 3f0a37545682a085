import { memo, type PointerEvent, type ReactNode, useEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import type { PlayedRun } from '../../simulation/played-run.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useUnits } from '../../units/units.ts';
import { textWidth } from '../placement/text-width.ts';
import type { LiveView } from '../state/live-view.ts';
import { commandLanes } from './command-lanes.ts';
import type { Playback } from './playback.ts';
import { linePath, placePhaseNames, roundTicks } from './trace-scale.ts';
import { useFormats } from './use-formats.ts';
import { useWidth } from './use-width.ts';

export type TracedSensor = 'tankPressure' | 'pumpPressure' | 'canisterPressure';

/** What a recording read, on the played run's clock, gauge Pa. */
export interface RecordedTrace {
  readonly timeS: Float32Array;
  readonly gaugePa: Float32Array;
}

interface Props {
  readonly live: LiveView;
  /** The sound system, on the same axes. */
  readonly beside?: LiveView | undefined;
  readonly recorded?: RecordedTrace | undefined;
  readonly playback: Playback;
  readonly sensor: TracedSensor;
}

const SIZE = 14;
const ROW = 19;
const PLOT = 150;
const LANE = 26;
const WIDEST = 1600;

/** The trace under the drawing: pressure as the sensor reads it, and what was commanded, with the clock's line across. */
export const TraceChart = memo(function TraceChart({ live, beside, recorded, playback, sensor }: Props): ReactNode {
  const run = useSyncExternalStore(live.subscribe, live.get)?.run;
  const other = useSyncExternalStore(beside?.subscribe ?? noSubscription, beside?.get ?? nothing)?.run;
  return run === undefined ? null : (
    <Trace run={run} beside={other} recorded={recorded} playback={playback} sensor={sensor} />
  );
});

const noSubscription = (): (() => void) => () => undefined;
const nothing = (): undefined => undefined;

interface TraceProps extends Pick<Props, 'recorded' | 'playback' | 'sensor'> {
  readonly run: PlayedRun;
  readonly beside: PlayedRun | undefined;
}

function Trace({ run, beside, recorded, playback, sensor }: TraceProps): ReactNode {
  const holder = useRef<HTMLDivElement>(null);
  const hand = useRef<HTMLDivElement>(null);
  const width = useWidth(holder, WIDEST);
  const text = useText();
  const units = useUnits();
  const { fixed } = useNumbers();
  const formats = useFormats();
  const words = text.drawing.trace;

  const reading = run.readings[sensor];
  const other = beside?.readings[sensor];
  const truth =
    run.traces[
      sensor === 'pumpPressure' ? 'pumpModule.gaugePa' : sensor === 'canisterPressure' ? 'head.gaugePa' : 'tank.gaugePa'
    ];
  const durationS = Math.max(run.durationS, beside?.durationS ?? 0);

  const plan = useMemo(() => {
    if (width === 0 || reading === undefined) return undefined;
    const ends = extremes([reading, other, truth, recorded?.gaugePa]);
    const ticks = roundTicks(
      units.from('pressure', Math.min(0, ends.low)),
      units.from('pressure', Math.max(0, ends.high)),
      4,
    );
    const step = (ticks.at[1] ?? 1) - (ticks.at[0] ?? 0);
    const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    const lanes = commandLanes(run, words);
    const names = ticks.at.map((v) => fixed(v, decimals));
    const left =
      Math.ceil(Math.max(...names.map((n) => textWidth(n, SIZE)), ...lanes.map((l) => textWidth(l.name, SIZE)), 44)) +
      12;
    const right = width - 10;
    const top = 2 * ROW + 6;
    const xAt = (timeS: number) => left + ((right - left) * timeS) / (durationS || 1);
    const yAt = (pa: number) =>
      top + (PLOT * (ticks.high - units.from('pressure', pa))) / (ticks.high - ticks.low || 1);
    const phases = placePhaseNames(
      run.steps.map(({ phase, fromS, toS }) => ({ kind: phase, fromS, toS })),
      (kind) => text.trade.phases[kind],
      xAt,
      right,
      SIZE,
    );
    const path = ({ timeS }: Pick<PlayedRun, 'timeS'>, values: Float32Array | undefined) =>
      values === undefined ? '' : linePath(timeS, values, xAt, yAt, right - left);
    return {
      lanes,
      names,
      ticks,
      left,
      right,
      top,
      xAt,
      phases,
      own: path(run, reading),
      truth: differs(reading, truth) ? path(run, truth) : '',
      beside: beside === undefined ? '' : path(beside, other),
      recorded: recorded === undefined ? '' : path(recorded, recorded.gaugePa),
      said: words.alt(
        formats.pressure(extremes([reading]).low),
        formats.pressure(extremes([reading]).high),
        formats.pressure(reading.at(-1) ?? 0),
      ),
      height: top + PLOT + 14 + lanes.length * LANE + 24,
      yOfTick: (v: number) => top + (PLOT * (ticks.high - v)) / (ticks.high - ticks.low || 1),
    };
  }, [width, run, beside, recorded, reading, other, truth, units, fixed, formats, text, words, durationS]);

  useEffect(() => {
    if (plan === undefined) return undefined;
    return playback.onFrame((timeS) => {
      const x = plan.xAt(Math.min(timeS, durationS)).toFixed(1);
      if (hand.current !== null) hand.current.style.transform = `translateX(${x}px)`;
    });
  }, [plan, playback, durationS]);

  const scrub = (event: PointerEvent<SVGSVGElement>, isRough: boolean): void => {
    if (plan === undefined) return;
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left;
    playback.goTo(((x - plan.left) / (plan.right - plan.left)) * durationS, isRough);
  };

  return (
    <div ref={holder} className="trace">
      {plan !== undefined && reading !== undefined && (
        <svg
          role="img"
          aria-label={plan.said}
          width={width}
          height={plan.height}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            scrub(event, true);
          }}
          onPointerMove={(event) => event.buttons > 0 && scrub(event, true)}
          onPointerUp={(event) => scrub(event, false)}
        >
          {plan.phases.map((p, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a phase keeps its place while a size changes its time
            <g key={i}>
              <path
                className="phase-tick"
                d={`M${p.tickX} ${p.row === undefined ? plan.top : plan.top - 4 - p.row * ROW - SIZE}V${plan.height - 24}`}
              />
              {p.row !== undefined && (
                <text className="quiet" x={p.x} y={plan.top - 8 - p.row * ROW} fontSize={SIZE}>
                  {p.text}
                </text>
              )}
            </g>
          ))}
          {plan.ticks.at.map((v, i) => (
            <g key={v}>
              <path className={v === 0 ? 'zero' : 'grid'} d={`M${plan.left} ${plan.yOfTick(v)}H${plan.right}`} />
              <text className="quiet" textAnchor="end" x={plan.left - 6} y={plan.yOfTick(v) + 5} fontSize={SIZE}>
                {plan.names[i]}
              </text>
            </g>
          ))}
          <text x={0} y={plan.top - 8} fontSize={SIZE} className="strong">
            {units.symbol('pressure')}
          </text>
          <path className="recorded" d={plan.recorded} />
          <path className="beside" d={plan.beside} />
          <path className="truth" d={plan.truth} />
          <path className="own" d={plan.own} />
          {plan.lanes.map((lane, i) => {
            const base = plan.top + PLOT + 14 + (i + 1) * LANE - 4;
            const d = lane.points
              .map(
                ([t, v], k) => `${k === 0 ? 'M' : 'L'}${plan.xAt(t).toFixed(1)} ${(base - v * (LANE - 10)).toFixed(1)}`,
              )
              .join('');
            return (
              <g key={lane.name}>
                <text className="strong" textAnchor="end" x={plan.left - 6} y={base} fontSize={SIZE}>
                  {lane.name}
                </text>
                <path className="command" d={d} />
              </g>
            );
          })}
          <TimeAxis
            left={plan.left}
            right={plan.right}
            y={plan.height - 6}
            durationS={durationS}
            time={(t) => formats.time(t, durationS)}
          />
        </svg>
      )}
      {plan !== undefined && (
        // Beside the picture and not in it, so that the picture is not drawn anew at every frame.
        <div ref={hand} className="hand" style={{ top: plan.top - 4, height: plan.height - 20 - plan.top }} />
      )}
      <p className="small quiet keys">
        <Key kind="own">
          {words.sensors[sensor]}, {words.reading}
        </Key>
        {recorded !== undefined && <Key kind="recorded">{words.recorded}</Key>}
        {plan?.truth !== '' && plan !== undefined && <Key kind="truth">{words.truth}</Key>}
        {beside !== undefined && <Key kind="beside">{words.soundRun}</Key>}
      </p>
    </div>
  );
}

/** A line of the chart and what it is; the two are never parted. */
function Key({ kind, children }: { readonly kind: string; readonly children: ReactNode }): ReactNode {
  return (
    <span className="pair">
      <span className={`key ${kind}`} /> {children}
    </span>
  );
}

function TimeAxis({
  left,
  right,
  y,
  durationS,
  time,
}: {
  readonly left: number;
  readonly right: number;
  readonly y: number;
  readonly durationS: number;
  readonly time: (t: number) => string;
}): ReactNode {
  return (
    <>
      <text className="quiet" x={left} y={y} fontSize={SIZE}>
        {time(0)}
      </text>
      <text className="quiet" x={(left + right) / 2} y={y} textAnchor="middle" fontSize={SIZE}>
        {time(durationS / 2)}
      </text>
      <text className="quiet" x={right} y={y} textAnchor="end" fontSize={SIZE}>
        {time(durationS)}
      </text>
    </>
  );
}

function extremes(all: readonly (Float32Array | undefined)[]): { readonly low: number; readonly high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const values of all) {
    for (const value of values ?? []) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return { low, high };
}

/** Whether what is read and what is true part by more than the sensor's noise. Judgement: 150 Pa, a twentieth of the time. */
function differs(reading: Float32Array, truth: Float32Array | undefined): boolean {
  if (truth === undefined) return false;
  let count = 0;
  for (let i = 0; i < reading.length; i++) if (Math.abs(reading[i]! - (truth[i] ?? 0)) > 150) count++;
  return count > reading.length * 0.05;
}
