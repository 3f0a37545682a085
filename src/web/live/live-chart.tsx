/** The trace as it comes. It follows the end by itself; what is shown is chosen, not dragged, so that nothing is lost sight of. */
import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import type { Phase } from '../../recording/recording.ts';
import { Choice } from '../kit/choice.tsx';
import type { ChannelLanes } from '../recording/channel-lanes.ts';
import '../recording/chart/chart.css';
import { ChartState } from '../recording/chart/chart-state.ts';
import { onColoursChange } from '../recording/chart/colours.ts';
import { PhaseStrip } from '../recording/chart/phase-strip.tsx';
import { Plot, type PlotArea, type PlotContent } from '../recording/chart/plot.ts';
import type { Source } from '../recording/chart/source.ts';
import { timeText } from '../recording/chart/ticks.ts';
import type { View } from '../recording/chart/view.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

const SPANS = { minute: 60, five: 300, all: Number.POSITIVE_INFINITY } as const;
type Span = keyof typeof SPANS;
/** The first seconds fill the width only by and by. */
const LEAST_SHOWN_S = 30;

interface Props {
  readonly source: Source;
  readonly lanes: ChannelLanes['lanes'];
  readonly phases: readonly Phase[];
}

function viewOf(span: Span, lastS: number): View {
  const fromS = Math.max(0, lastS - SPANS[span]);
  return { fromS, toS: Math.max(lastS, fromS + Math.min(LEAST_SHOWN_S, SPANS[span])) };
}

export function LiveChart({ source, lanes, phases }: Props): ReactNode {
  const { live: text, recording, trade } = useText();
  const { fixed, duration } = useNumbers();
  const [span, setSpan] = useState<Span>('all');
  const [area, setArea] = useState<PlotArea | null>(null);
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<Plot | null>(null);
  const state = useRef(new ChartState({ fromS: 0, toS: LEAST_SHOWN_S }, 1)).current;
  const lastS = source.timeS.at(-1) ?? 0;
  const mark = fixed(0.5, 1).charAt(1);
  const content = useMemo<PlotContent>(
    () => ({
      source,
      lanes,
      phases,
      mark,
      timeUnit: (wideS) => (wideS < 180 ? 's' : wideS < 3600 ? recording.chart.minutesSeconds : ''),
    }),
    [source, lanes, phases, mark, recording],
  );
  const contentNow = useRef(content);
  contentNow.current = content;

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const made = new Plot(element, state, contentNow.current);
    plot.current = made;
    setArea(made.area);
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
      made.destroy();
      plot.current = null;
    };
  }, [state]);
  const lanesDrawn = lanes.map(({ id }) => id).join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another number of lanes is another height
  useEffect(() => {
    plot.current?.resize();
    if (plot.current !== null) setArea(plot.current.area);
  }, [lanesDrawn]);
  useEffect(() => {
    plot.current?.replace(content);
    const view = viewOf(span, lastS);
    state.extend({ fromS: 0, toS: view.toS }, view);
  }, [content, span, lastS, state]);
  useEffect(() => {
    const surface = plot.current?.surface;
    if (surface === undefined || area === null) return;
    surface.setAttribute('role', 'img');
    surface.setAttribute('aria-label', text.trace.label(lanes.length, duration(lastS)));
  }, [area, lanes.length, lastS, text, duration]);

  return (
    <div className="lane-chart live-chart">
      <div className="picture">
        {area !== null && phases.length > 0 && (
          <PhaseStrip
            state={state}
            area={area}
            phases={phases}
            wordOf={(kind) => trade.phases[kind]}
            nameOf={(before, after) => recording.chart.boundary(trade.phases[before], trade.phases[after])}
            timeOf={(t) => timeText(t, lastS, 0, mark)}
            snap={(t) => t}
            leastS={1}
          />
        )}
        <div className="plot" ref={host} />
      </div>
      <Choice
        label={text.trace.span}
        value={span}
        options={(['minute', 'five', 'all'] as const).map((value) => ({ value, name: text.trace.spans[value] }))}
        onChange={setSpan}
      />
    </div>
  );
}
