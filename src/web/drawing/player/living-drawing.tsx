import { memo, type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { faultKind } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import type { Network } from '../../../system/network.ts';
import type { PartId } from '../../../system/parts.ts';
import { useTheme } from '../../look/theme.ts';
import { useText } from '../../text/language.ts';
import { MarksCanvas } from '../picture/marks-canvas.ts';
import { Painter } from '../picture/painter.ts';
import { StillArrows } from '../picture/still-arrows.tsx';
import { SystemPicture } from '../picture/system-picture.tsx';
import { placeSystem } from '../placement/place-system.ts';
import type { LiveView } from '../state/live-view.ts';
import type { RunView } from '../state/run-view.ts';
import { PartTargets } from './part-targets.tsx';
import type { Playback } from './playback.ts';
import { paintWords } from './state-words.ts';
import { useFormats } from './use-formats.ts';
import { useLessMotion } from './use-less-motion.ts';
import { useWidth } from './use-width.ts';

interface Props {
  readonly network: Network;
  readonly fault?: Fault | undefined;
  /** What is drawn at every frame, and what the parts' names tell. */
  readonly live: LiveView;
  readonly view: RunView | undefined;
  readonly limitPa: number;
  readonly playback: Playback;
  readonly chosen: PartId | undefined;
  readonly onChoose: (part: PartId) => void;
  readonly name: string;
}

const STILL_EVERY_MS = 500;
/** A flow whose number is as long as any, 0.088 L/min. */
const SAMPLE_FLOW_KG_PER_S = 0.088 * (1.204 / 60_000);

/** The drawing of one system, alive. */
export const LivingDrawing = memo(function LivingDrawing({
  network,
  fault,
  live,
  view,
  limitPa,
  playback,
  chosen,
  onChoose,
  name,
}: Props): ReactNode {
  const holder = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const width = useWidth(holder);
  const text = useText();
  const formats = useFormats();
  const { shown } = useTheme();
  const isStill = useLessMotion();
  const [stillView, setStillView] = useState(0);

  const faultKey = fault === undefined ? '' : `${fault.kind}|${fault.place ?? ''}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a fault's size changes no place
  const scheme = useMemo(() => {
    if (width === 0) return undefined;
    const words = text.drawing;
    const kind = fault === undefined ? undefined : faultKind(fault.kind);
    const room =
      kind?.size === undefined ? '' : formats.size(kind, kind.size.unit === 'Pa' ? -kind.size.high : kind.size.high);
    return placeSystem(
      network,
      {
        part: (part) => words.parts[part],
        place: (place) => words.places[place],
        valveRoom: words.valve.room,
        pulseRoom: words.valve.pulseRoom,
        pressureRoom: formats.pressure(-88_888),
        carbonRoom: words.ofMost(formats.mass(0.888), formats.mass(0.888)),
        ...(isStill ? { flowRoom: formats.flow(SAMPLE_FLOW_KG_PER_S) } : {}),
        ...(kind === undefined ? {} : { fault: { name: words.faultsShort[kind.kind] ?? kind.words, room } }),
      },
      width,
      fault,
    );
  }, [network, width, text, formats, faultKey, isStill]);

  const words = useMemo(() => paintWords(text.drawing, formats), [text, formats]);

  useEffect(() => {
    const root = svg.current;
    const sheet = canvas.current;
    if (scheme === undefined || root === null || sheet === null) return undefined;
    const painter = new Painter(root, scheme);
    const marks = new MarksCanvas(sheet, scheme, window.devicePixelRatio || 1);
    const style = getComputedStyle(root);
    const colours = { ink: style.getPropertyValue('--ink'), paper: style.getPropertyValue('--paper'), theme: shown };
    let lastStillMs = 0;
    let drawn: {
      readonly view?: RunView;
      readonly timeS: number;
      readonly tempo: number;
      readonly isResting: boolean;
    } = {
      timeS: Number.NaN,
      tempo: 0,
      isResting: false,
    };
    const endFrames = playback.onFrame((timeS, nowMs, isResting) => {
      const now = live.get();
      if (now === undefined) return;
      const { tempo } = playback.get();
      // The other of two drawings has changed, not this one.
      const isSame = drawn.view === now && drawn.timeS === timeS && drawn.tempo === tempo;
      if (isSame && drawn.isResting && isResting) return;
      drawn = { view: now, timeS, tempo, isResting };
      now.moveTo(timeS);
      // A sketch is followed by its fine run: what is read, not watched, need not keep up with it.
      const isAtRest = isResting && !now.run.isCoarse;
      painter.paint(now, limitPa, words, nowMs, isAtRest);
      if (!isStill) marks.draw(now, tempo, colours);
      // Arrows and spoken states follow when it rests; without motion, twice a second.
      if (isAtRest || (isStill && nowMs - lastStillMs > STILL_EVERY_MS)) {
        lastStillMs = nowMs;
        setStillView(timeS);
      }
    });
    const endRuns = live.subscribe(() => playback.invalidate());
    return () => {
      endFrames();
      endRuns();
    };
  }, [scheme, live, limitPa, words, playback, shown, isStill]);

  return (
    <div ref={holder} className={isStill ? 'drawing is-still' : 'drawing'} data-layout={network.layout}>
      {view === undefined && <p className="small quiet computing">{text.drawing.choose.computing}</p>}
      {scheme !== undefined && (
        <>
          {/* biome-ignore lint/a11y/useSemanticElements: a picture whose parts are buttons is a group of them */}
          <svg
            ref={svg}
            role="group"
            aria-label={name}
            width={scheme.width}
            height={scheme.height}
            viewBox={`0 0 ${scheme.width} ${scheme.height}`}
          >
            <SystemPicture scheme={scheme} manifold={text.drawing.manifold} ejector={text.drawing.parts.ejector} />
            {view !== undefined && <StillArrows scheme={scheme} view={view} timeS={stillView} />}
            <PartTargets scheme={scheme} view={view} timeS={stillView} chosen={chosen} onChoose={onChoose} />
          </svg>
          {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a canvas takes no focus */}
          <canvas ref={canvas} aria-hidden="true" style={{ width: scheme.width, height: scheme.height }} />
        </>
      )}
    </div>
  );
});
