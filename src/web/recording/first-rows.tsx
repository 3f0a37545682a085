/** The first rows of the file under what each column is taken for. */
import type { ReactNode } from 'react';
import type { Mapping } from '../../recording/mapping.ts';
import { useText } from '../text/language.ts';

interface Props {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly mapping: Mapping;
}

const SHOWN = 6;

export function FirstRows({ header, rows, mapping }: Props): ReactNode {
  const { recording } = useText();
  const text = recording.mapping;
  const meaning = (name: string): string => {
    if (mapping.time?.columns.includes(name)) return text.time;
    const found = mapping.columns.find(({ column }) => column === name);
    if (found === undefined || found.channel === null) return text.leftOut;
    return [recording.channels[found.channel], found.unit].filter(Boolean).join(', ');
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={text.firstRows}>
      <table className="small first-rows">
        <caption>{text.firstRows}</caption>
        <thead>
          <tr>
            {header.map((name) => (
              <th scope="col" key={name}>
                <b>{name}</b>
                <br />
                {meaning(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, SHOWN).map((row, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a file have no other name
            <tr key={k}>
              {header.map((name, c) => (
                <td key={name}>{row[c] ?? ''}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
