/** Before and after on the same logarithmic scale, with the limit. */
import type { ReactNode } from 'react';
import type { Interval } from '../../diagnosis/finding.ts';
import { scaleRange, shareOn, ticksOn } from '../finding/log-scale.ts';
import { M_PER_MM, useDiameter } from '../finding/use-diameter.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';

interface Props {
  readonly before: Interval | undefined;
  readonly after: Interval | undefined;
  readonly limitMm: number;
}

export function ProofScale({ before, after, limitMm }: Props): ReactNode {
  const { checks } = useText();
  const words = checks.proof;
  const units = useUnits();
  const { fixed } = useNumbers();
  const { interval, diameter } = useDiameter();
  const sizes = [before, after].filter((size) => size !== undefined);
  const range = scaleRange([limitMm, ...sizes.flatMap(({ lo90, hi90 }) => [lo90, hi90])]);
  const at = (mm: number): string => `${100 * shareOn(range, mm)}%`;
  const perUnit = units.unit('length').factor / M_PER_MM;
  const said = (size: Interval | undefined): string => (size === undefined ? words.noSize : interval(size));
  const rows = [
    [words.before, before, 'rival'],
    [words.after, after, ''],
  ] as const;
  return (
    <figure className="proof-scale">
      <div className="rows" role="img" aria-label={words.scale(said(before), said(after), diameter(limitMm))}>
        {rows.map(([name, size, kind]) => (
          <div key={name} className="lane">
            <span className="name">{name}</span>
            <div className="plot">
              <i className="limit" style={{ left: at(limitMm) }} />
              {size !== undefined && (
                <>
                  <i
                    className={`interval ${kind}`}
                    style={{
                      left: at(size.lo90),
                      width: `${Math.max(0.8, 100 * (shareOn(range, size.hi90) - shareOn(range, size.lo90)))}%`,
                    }}
                  />
                  <i className="median" style={{ left: at(size.median) }} />
                </>
              )}
            </div>
            <span className="said">{said(size)}</span>
          </div>
        ))}
        <div className="lane">
          <span className="name">{units.symbol('length')}</span>
          <div className="plot ticks">
            {ticksOn([range[0] / perUnit, range[1] / perUnit]).map((tick) => (
              <span key={tick} className="tick" style={{ left: at(tick * perUnit) }}>
                {fixed(tick, Math.max(0, Math.ceil(-Math.log10(tick) - 1e-9)))}
              </span>
            ))}
          </div>
          <span className="said warn">
            {words.limit}: {diameter(limitMm)}
          </span>
        </div>
      </div>
      <figcaption className="small quiet">{words.leakOnly}</figcaption>
    </figure>
  );
}
