import { type ReactNode, useEffect, useRef } from 'react';
import { useTheme } from '../../look/theme.ts';
import { useText } from '../../text/language.ts';
import { drawMark } from '../picture/marks-canvas.ts';
import { MARK_KG } from '../state/flow-marks.ts';
import { pressureColour } from '../state/pressure-scale.ts';
import { useFormats } from './use-formats.ts';
import { useLessMotion } from './use-less-motion.ts';

const STEPS = 24;

/** The pressure scale with its numbers, and what the marks stand for. Always in view of the drawing. */
export function Legend({ limitPa }: { readonly limitPa: number }): ReactNode {
  const text = useText();
  const formats = useFormats();
  const isStill = useLessMotion();
  const words = text.drawing.legend;
  const cells = Array.from({ length: STEPS + 1 }, (_, i) => ((2 * i) / STEPS - 1) * limitPa);
  return (
    <div className="drawing-legend small">
      <div>
        <p className="name">{words.title}</p>
        <div className="scale" aria-hidden="true">
          {cells.map((pa) => (
            <span key={pa} style={{ background: pressureColour(pa, limitPa) }} />
          ))}
        </div>
        <div className="ends">
          <span>{formats.pressure(-limitPa)}</span>
          <span>{words.ambient}</span>
          <span>{formats.pressure(limitPa)}</span>
        </div>
      </div>
      <div>
        {isStill ? (
          <p>{words.arrows}</p>
        ) : (
          <>
            <p className="name">{words.marks}</p>
            <p className="marks">
              {MARK_KG.map((kg, i) => (
                <span key={kg}>
                  <Mark kind={i} isVapour /> {formats.markMass(kg)}
                </span>
              ))}
            </p>
            <p className="marks">
              <span>
                <Mark kind={0} isVapour={false} /> {words.air}
              </span>
              <span>
                <Mark kind={0} isVapour /> {words.vapour}
              </span>
            </p>
          </>
        )}
        <p>{words.carbon}</p>
      </div>
    </div>
  );
}

const SIDE = 20;

/** One mark as the canvas draws it. */
function Mark({ kind, isVapour }: { readonly kind: number; readonly isVapour: boolean }): ReactNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { shown } = useTheme();
  useEffect(() => {
    const node = canvas.current;
    const g = node?.getContext('2d');
    if (node === null || g === null || g === undefined) return;
    const density = window.devicePixelRatio || 1;
    node.width = SIDE * density;
    node.height = SIDE * density;
    g.setTransform(density, 0, 0, density, 0, 0);
    g.clearRect(0, 0, SIDE, SIDE);
    const style = getComputedStyle(node);
    const colours = { ink: style.getPropertyValue('--ink'), paper: style.getPropertyValue('--paper'), theme: shown };
    drawMark(g, kind, SIDE / 2, SIDE / 2, 0, isVapour, colours);
  }, [kind, isVapour, shown]);
  // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a canvas takes no focus
  return <canvas ref={canvas} aria-hidden="true" style={{ width: SIDE, height: SIDE }} />;
}
