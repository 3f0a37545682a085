/** The hole on a logarithmic scale: the 90 % interval beside the limits, each with its source. */
import { Fragment, type ReactNode } from 'react';
import type { Finding } from '../../diagnosis/finding.ts';
import { exceeds, isFromMemory, type Limit, REFERENCE_LIMITS } from '../../report/limits.ts';
import { sizeNote } from '../../report/size-note.ts';
import { readSettings } from '../api/shop.ts';
import { useLoaded } from '../kit/use-loaded.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { scaleRange, shareOn, ticksOn } from './log-scale.ts';
import { M_PER_MM, useDiameter } from './use-diameter.ts';

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
  const rising = [...limits].sort((a, b) => a.diameterMm - b.diameterMm);
  const shares = rising.map(({ diameterMm }) => shareOn(range, diameterMm));
  // All names stand on the side with more room. The one that is nearest to it comes last, so that no line runs through a name.
  const isLeft = (shares[0] ?? 0) > 1 - (shares.at(-1) ?? 1);
  const inRows = isLeft ? rising.toReversed() : rising;
  return (
    <div className="size-scale" role="img" aria-label={label}>
      <div className="plot">
        <div className="limits" style={{ gridTemplateRows: `repeat(${inRows.length}, auto) 1rem` }}>
          {inRows.map(({ diameterMm, label: name, source }, row) => {
            const share = shareOn(range, diameterMm);
            return (
              <Fragment key={name}>
                <div className="limit" style={{ left: `${100 * share}%`, gridRow: `${row + 1} / -1` }} />
                <span
                  className="limit-name"
                  style={{
                    gridRow: row + 1,
                    ...(isLeft
                      ? { marginRight: `${100 * (1 - share)}%`, textAlign: 'right' }
                      : { marginLeft: `${100 * share}%` }),
                  }}
                >
                  {name}
                  {isFromMemory({ source }) ? ` (${memory})` : ''}
                </span>
              </Fragment>
            );
          })}
        </div>
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
