import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
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
import type { RunView } from '../state/run-view.ts';
import { PartTargets } from './part-targets.tsx';
import type { Playback } from './playback.ts';
import { type FaultWords, NO_FAULT, paintWords } from './state-words.ts';
import { useFormats } from './use-formats.ts';
import { useLessMotion } from './use-less-motion.ts';
import { useWidth } from './use-width.ts';

interface Props {
  readonly network: Network;
  readonly fault?: Fault | undefined;
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
export function LivingDrawing({ network, fault, view, limitPa, playback, chosen, onChoose, name }: Props): ReactNode {
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
  const faultWords = useMemo<FaultWords>(() => {
    if (fault === undefined) return NO_FAULT;
    const kind = faultKind(fault.kind);
    const size = fault.size ?? kind.size?.typical;
    return {
      name: text.drawing.faultsShort[kind.kind] ?? kind.words,
      size: kind.size === undefined || size === undefined ? '' : formats.size(kind, size),
    };
  }, [fault, formats, text]);

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

  const words = useMemo(() => paintWords(text.drawing, formats, faultWords), [text, formats, faultWords]);

  useEffect(() => {
    const root = svg.current;
    const sheet = canvas.current;
    if (scheme === undefined || view === undefined || root === null || sheet === null) return undefined;
    const painter = new Painter(root, scheme);
    const marks = new MarksCanvas(sheet, scheme, view, window.devicePixelRatio || 1);
    const style = getComputedStyle(root);
    const colours = { ink: style.getPropertyValue('--ink'), paper: style.getPropertyValue('--paper'), theme: shown };
    let lastStillMs = 0;
    return playback.onFrame((timeS, nowMs, isResting) => {
      view.moveTo(timeS);
      painter.paint(view, limitPa, words, nowMs, isResting);
      if (!isStill) marks.draw(view, playback.get().tempo, colours);
      // Arrows and spoken states follow when it rests; without motion, twice a second.
      if (isResting || (isStill && nowMs - lastStillMs > STILL_EVERY_MS)) {
        lastStillMs = nowMs;
        setStillView(timeS);
      }
    });
  }, [scheme, view, limitPa, words, playback, shown, isStill]);

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
}
