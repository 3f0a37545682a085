/** A chart of aligned lanes with everything a person does to it. Loaded only where a chart is shown. */
import { type ReactNode, useEffect, useId, useMemo, useRef, useState } from 'react';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import './chart.css';
import type { PhaseRow } from './boundaries.ts';
import { ChartState } from './chart-state.ts';
import { onColoursChange } from './colours.ts';
import { CursorValues, type Readout } from './cursor-values.tsx';
import { listen } from './gestures.ts';
import type { Lane } from './lanes.ts';
import { nearest } from './nearest.ts';
import { PhaseStrip } from './phase-strip.tsx';
import { Plot, type PlotArea, type PlotContent } from './plot.ts';
import type { Source } from './source.ts';
import { timeText } from './ticks.ts';
import { pan, type View, zoom } from './view.ts';

export interface LaneChartProps {
  /** What the chart shows, for those who do not see it. */
  readonly label: string;
  readonly source: Source;
  readonly lanes: readonly Lane[];
  readonly readouts: readonly Readout[];
  readonly phases: PhaseRow;
  /** Absent: phases cannot be changed here. */
  readonly onPhases?: (phases: PhaseRow) => void;
  /** Hands out what is seen as a table. */
  readonly onDownload?: (view: View) => void;
}

/** A view is never narrower than so many samples. */
const FEWEST_SAMPLES = 8;
const BUTTON_SHARE = 0.5;
const BUTTON_FACTOR = 2;

export function LaneChart({ label, source, lanes, readouts, phases, onPhases, onDownload }: LaneChartProps): ReactNode {
  const { recording: text, trade } = useText();
  const { fixed } = useNumbers();
  const helpId = useId();
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<Plot | null>(null);
  const [area, setArea] = useState<PlotArea | null>(null);
  const [isBrushing, setBrushing] = useState(false);
  const [dragged, setDragged] = useState<PhaseRow | null>(null);
  const shownPhases = dragged ?? phases;
  const latest = useRef({ isBrushing, dragged });
  latest.current = { isBrushing, dragged };

  const { timeS } = source;
  const leastS = ((timeS.at(-1) ?? 1) - (timeS[0] ?? 0)) / Math.max(1, timeS.length - 1);
  const state = useMemo(
    () => new ChartState({ fromS: timeS[0] ?? 0, toS: timeS.at(-1) ?? 1 }, leastS * FEWEST_SAMPLES),
    [timeS, leastS],
  );
  const mark = fixed(0.5, 1).charAt(1);
  const content = useMemo<PlotContent>(
    () => ({
      source,
      lanes,
      phases,
      mark,
      timeUnit: (wideS) => (wideS < 180 ? 's' : wideS < 3600 ? text.chart.minutesSeconds : ''),
    }),
    [source, lanes, phases, mark, text],
  );
  const contentNow = useRef(content);
  contentNow.current = content;

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const made = new Plot(element, state, contentNow.current);
    plot.current = made;
    setArea(made.area);
    const stopListening = listen(made, state, {
      isBrushing: () => latest.current.isBrushing,
      onBrushed: () => setBrushing(false),
    });
    let wide = element.clientWidth;
    const watcher = new ResizeObserver(() => {
      if (element.clientWidth === wide) return;
      wide = element.clientWidth;
      made.resize();
      setArea(made.area);
    });
    watcher.observe(element);
    const stopColours = onColoursChange(() => made.recolour());
    document.fonts?.ready.then(() => made.recolour());
    return () => {
      stopColours();
      watcher.disconnect();
      stopListening();
      made.destroy();
      plot.current = null;
    };
  }, [state]);
  useEffect(() => {
    plot.current?.replace(content);
    if (plot.current !== null) setArea(plot.current.area);
  }, [content]);
  useEffect(() => {
    if (dragged !== null) plot.current?.showPhases(dragged);
  }, [dragged]);
  // What was dragged stands until the saved phases arrive.
  // biome-ignore lint/correctness/useExhaustiveDependencies: new phases end a drag
  useEffect(() => setDragged(null), [phases]);
  useEffect(() => {
    const surface = plot.current?.surface;
    if (surface === undefined || area === null) return;
    surface.tabIndex = 0;
    surface.setAttribute('role', 'application');
    surface.setAttribute('aria-label', label);
    surface.setAttribute('aria-describedby', helpId);
  }, [label, helpId, area]);

  const timeOf = (t: number): string => {
    const decimals = leastS < 0.05 ? 2 : leastS < 0.5 ? 1 : 0;
    return timeText(t, state.all.toS - state.all.fromS, decimals, mark) + (state.all.toS < 180 ? '\u00a0s' : '');
  };
  const zoomBy = (factor: number): void => {
    const { view, cursorS } = state.read();
    const middle = (view.fromS + view.toS) / 2;
    state.show(zoom(view, factor, cursorS !== null && cursorS > view.fromS && cursorS < view.toS ? cursorS : middle));
  };

  return (
    <div className={isBrushing ? 'lane-chart brushing' : 'lane-chart'}>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would draw a frame */}
      <div className="chart-tools" role="group" aria-label={text.chart.tools}>
        <button
          type="button"
          className="button"
          onClick={() => zoomBy(1 / BUTTON_FACTOR)}
          aria-label={text.chart.zoomIn}
        >
          +
        </button>
        <button type="button" className="button" onClick={() => zoomBy(BUTTON_FACTOR)} aria-label={text.chart.zoomOut}>
          −
        </button>
        <button
          type="button"
          className="button"
          onClick={() => state.show(pan(state.read().view, -BUTTON_SHARE))}
          aria-label={text.chart.earlier}
        >
          ←
        </button>
        <button
          type="button"
          className="button"
          onClick={() => state.show(pan(state.read().view, BUTTON_SHARE))}
          aria-label={text.chart.later}
        >
          →
        </button>
        <button type="button" className="button" onClick={() => state.show(state.all)}>
          {text.chart.whole}
        </button>
        <button
          type="button"
          className="button"
          aria-pressed={isBrushing}
          onClick={() => setBrushing((before) => !before)}
        >
          {text.chart.selectSpan}
        </button>
      </div>
      <p id={helpId} className="visually-hidden">
        {text.chart.keys}
      </p>
      <div className="picture">
        {area !== null && shownPhases.length > 0 && (
          <PhaseStrip
            state={state}
            area={area}
            phases={shownPhases}
            wordOf={(kind) => trade.phases[kind]}
            nameOf={(before, after) => text.chart.boundary(trade.phases[before], trade.phases[after])}
            timeOf={timeOf}
            snap={(t) => timeS[nearest(timeS, t)] ?? t}
            leastS={leastS}
            {...(onPhases === undefined
              ? {}
              : {
                  onMove: setDragged,
                  onMoved: () => {
                    if (latest.current.dragged !== null) onPhases(latest.current.dragged);
                  },
                })}
          />
        )}
        <div className="plot" ref={host} />
      </div>
      <p className="small quiet no-print">{text.chart.keysSeen}</p>
      <CursorValues state={state} source={source} readouts={readouts} timeOf={timeOf} />
      {onDownload !== undefined && (
        <div className="no-print">
          <button type="button" className="button bare" onClick={() => onDownload(state.read().view)}>
            {text.figures.download}
          </button>
        </div>
      )}
    </div>
  );
}
