/** A section as lines of words, so that two of them can be laid side by side. */
import type { ReactNode } from 'react';
import { useText } from '../text/language.ts';

/** "words: …", one line per leaf; long enough to recognise, short enough to compare. */
export function linesOf(value: unknown, path = ''): [string, string][] {
  if (value === null || value === undefined) return [];
  if (typeof value !== 'object') return [[path, String(value)]];
  return Object.entries(value).flatMap(([key, part]) => {
    if (key === 'id' || key === 'schema' || key === 'sha256') return [];
    const name = Array.isArray(value) ? `${Number(key) + 1}` : key;
    return linesOf(part, path === '' ? name : `${path} · ${name}`);
  });
}

interface Props {
  readonly mine: unknown;
  readonly theirs: unknown;
  readonly mineName: string;
  readonly theirsName: string;
}

/** Only what differs, part by part. */
export function Difference({ mine, theirs, mineName, theirsName }: Props): ReactNode {
  const { conflict } = useText().job;
  const a = new Map(linesOf(mine));
  const b = new Map(linesOf(theirs));
  const parts = [...new Set([...a.keys(), ...b.keys()])].filter((part) => a.get(part) !== b.get(part));
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">{conflict.part}</th>
            <th scope="col">{mineName}</th>
            <th scope="col">{theirsName}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={part}>
              <th scope="row" className="small quiet">
                {part || '·'}
              </th>
              <td>
                {a.has(part) ? (
                  <pre className="diff">{a.get(part)}</pre>
                ) : (
                  <span className="quiet">{conflict.absent}</span>
                )}
              </td>
              <td>
                {b.has(part) ? (
                  <pre className="diff">{b.get(part)}</pre>
                ) : (
                  <span className="quiet">{conflict.absent}</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
