import { type ReactNode, useState } from 'react';
import { isFromMemory } from '../../report/limits.ts';
import type { Settings } from '../../server/contract/settings.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/fields.tsx';
import { QuantityField } from '../kit/quantity-field.tsx';
import { useText } from '../text/language.ts';

type Limit = Settings['limits'][number];

interface Props {
  readonly limits: readonly Limit[];
  readonly isReadOnly: boolean;
  readonly onChange: (limits: readonly Limit[]) => void;
}

const M_PER_MM = 1e-3;
const MOST = 6;

/** Limits are kept when every one of them is whole; a half-typed one stays here until then. */
export function LimitsPart({ limits, isReadOnly, onChange }: Props): ReactNode {
  const text = useText();
  const words = text.shop.settings;
  const [typed, setTyped] = useState<readonly Partial<Limit>[]>(limits);
  const isWhole = (limit: Partial<Limit>): limit is Limit =>
    limit.diameterMm !== undefined && limit.diameterMm > 0 && !!limit.label?.trim() && !!limit.source?.trim();
  const set = (next: readonly Partial<Limit>[]): void => {
    setTyped(next);
    const whole = next.filter(isWhole);
    if (whole.length === next.length && whole.length > 0) onChange(whole);
  };
  const change = (at: number, limit: Partial<Limit>): void => set(typed.map((l, i) => (i === at ? limit : l)));
  return (
    <>
      <p>{words.limitsWords}</p>
      <ul className="rows">
        {typed.map((limit, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a limit has no name of its own until one is typed.
          <li key={at} className="stack">
            <div className="fields">
              <TextField
                label={words.limitLabel}
                value={limit.label ?? ''}
                readOnly={isReadOnly}
                onChange={(label) => change(at, { ...limit, label })}
              />
              <QuantityField
                label={words.limitSize}
                quantity="length"
                valueSi={limit.diameterMm === undefined ? undefined : limit.diameterMm * M_PER_MM}
                readOnly={isReadOnly}
                check={(value) => (value > 0 ? undefined : text.job.car.notPositive)}
                onChange={(value) => {
                  const { diameterMm: _, ...rest } = limit;
                  change(at, value === undefined ? rest : { ...rest, diameterMm: value / M_PER_MM });
                }}
              />
              <TextField
                label={words.limitSource}
                lines={2}
                value={words.limitSourceShown(limit.source ?? '')}
                readOnly={isReadOnly}
                onChange={(source) => change(at, { ...limit, source })}
              />
            </div>
            <div className="row-head">
              <p className="small warn">{isFromMemory({ source: limit.source ?? '' }) ? words.isFromMemory : ''}</p>
              {!isReadOnly && typed.length > 1 && (
                <Button
                  kind="bare"
                  aria-label={words.removeLimit(limit.label ?? '')}
                  onClick={() => set(typed.filter((_, i) => i !== at))}
                >
                  {text.common.remove}
                </Button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {!isReadOnly && typed.length < MOST && (
        <div className="buttons">
          <Button onClick={() => setTyped([...typed, { label: '', source: '' }])}>{words.addLimit}</Button>
        </div>
      )}
      {typed.some((limit) => isFromMemory({ source: limit.source ?? '' })) && (
        <p className="small quiet">{words.limitMemory}</p>
      )}
    </>
  );
}
