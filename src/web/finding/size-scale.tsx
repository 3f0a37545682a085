/** The hole on a logarithmic scale: the 90 % interval beside the limits, each with its source. */
import { Fragment, type ReactNode } from 'react';
import type { Finding } from '../../diagnosis/finding.ts';
import { exceeds, type Limit, REFERENCE_LIMITS } from '../../report/limits.ts';
import { sizeNote } from '../../report/size-note.ts';
import { readSettings } from '../api/shop.ts';
import { useLoaded } from '../kit/use-loaded.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { scaleRange, shareOn, ticksOn } from './log-scale.ts';
import { M_PER_MM, useDiameter } from './use-diameter.ts';

/** Share of the scale from which a name has no room to the right any more. */
const NEAR_END = 0.6;

const isFromMemory = ({ source }: Limit): boolean => /from memory/i.test(source);

interface Props {
  readonly finding: Finding;
  /** Whoever reads by a link has no part in the shop's own limits. */
  readonly isGuest: boolean;
}

export function SizeScale({ finding, isGuest }: Props): ReactNode {
  const { finding: text, trade } = useText();
  const { percent } = useNumbers();
  const { interval, diameter } = useDiameter();
  const [shop] = useLoaded('limits', async () => (isGuest ? REFERENCE_LIMITS : (await readSettings()).limits));
  const limits = shop.state === 'there' ? shop.value : REFERENCE_LIMITS;
  const size = finding.diameterMm;
  const note = sizeNote(finding);
  if (size === null) return null;
  const nameOf = (limit: Limit): string => `${limit.label} (${diameter(limit.diameterMm)})`;
  const marked = (limit: Limit): string =>
    isFromMemory(limit) ? `${nameOf(limit)}, ${text.size.fromMemory}` : nameOf(limit);
  return (
    <div className="stack size">
      <h3>{text.size.title}</h3>
      <Scale
        label={text.size.label(interval(size), limits.map(marked).join('; '))}
        size={size}
        limits={limits}
        memory={text.size.fromMemory}
      />
      {finding.verdict === 'no-fault-seen' && <p>{text.size.bound}</p>}
      {note !== null && (
        <p>
          {note.kind === 'beside'
            ? text.size.notes.beside(trade.causes[note.cause])
            : text.size.notes.weighed(trade.causes[note.cause], interval(note.own))}
        </p>
      )}
      <ul className="plain">
        <li>
          <b>{interval(size)}</b>
        </li>
        {limits.map((limit) => {
          const probability = exceeds(finding, limit);
          return probability === null ? null : (
            <li key={limit.label}>{text.size.over(nameOf(limit), percent(probability))}</li>
          );
        })}
      </ul>
      <p className="small quiet">
        {text.size.convention} {limits.map(({ label, source }) => text.size.limitSource(label, source)).join(' ')}
      </p>
    </div>
  );
}

interface ScaleProps {
  readonly label: string;
  readonly size: NonNullable<Finding['diameterMm']>;
  readonly limits: readonly Limit[];
  readonly memory: string;
}

function Scale({ label, size, limits, memory }: ScaleProps): ReactNode {
  const units = useUnits();
  const { fixed } = useNumbers();
  const perUnit = units.unit('length').factor / M_PER_MM;
  const range = scaleRange([size.lo90, size.hi90, ...limits.map(({ diameterMm }) => diameterMm)]);
  const at = (mm: number): string => `${100 * shareOn(range, mm)}%`;
  const ticks = ticksOn([range[0] / perUnit, range[1] / perUnit]);
  const from = shareOn(range, size.lo90);
  const to = shareOn(range, size.hi90);
  return (
    <div className="size-scale" role="img" aria-label={label}>
      <div className="plot">
        {[...limits]
          .sort((a, b) => a.diameterMm - b.diameterMm)
          .map((limit, k) => {
            const share = shareOn(range, limit.diameterMm);
            // Its name stands to the right of it, away from smaller limits, and wraps there; near the end to the left.
            const isLeft = share > NEAR_END;
            return (
              <Fragment key={limit.label}>
                <div className={`limit row-${k % 2}`} style={{ left: at(limit.diameterMm) }} />
                <span
                  className={`limit-name row-${k % 2}`}
                  style={
                    isLeft
                      ? { right: `${100 * (1 - share)}%`, maxWidth: `${100 * share}%`, textAlign: 'right' }
                      : { left: `${100 * share}%`, maxWidth: `${100 * (1 - share)}%` }
                  }
                >
                  {limit.label}
                  {isFromMemory(limit) ? ` (${memory})` : ''}
                </span>
              </Fragment>
            );
          })}
        <div className="line" />
        {ticks.map((tick) => (
          <div key={tick} className="tick" style={{ left: at(tick * perUnit) }}>
            <span>{fixed(tick, Math.max(0, Math.ceil(-Math.log10(tick) - 1e-9)))}</span>
          </div>
        ))}
        <div className="interval" style={{ left: `${100 * from}%`, width: `${Math.max(0.8, 100 * (to - from))}%` }} />
        <div className="median" style={{ left: at(size.median) }} />
      </div>
      <span className="unit">{units.symbol('length')}</span>
    </div>
  );
}
