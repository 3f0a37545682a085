/** What comes: every channel with its newest value and how often it comes. */
import type { ReactNode } from 'react';
import { CHANNEL_ORDER } from '../../recording/own-columns.ts';
import type { LiveStatus } from '../../server/contract/live.ts';
import { shownAs } from '../recording/channel-lanes.ts';
import { toShown } from '../recording/chart/lanes.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import type { LiveData } from './live-data.ts';

interface Props {
  readonly channels: LiveStatus['channels'];
  readonly data: LiveData;
}

export function ChannelTable({ channels, data }: Props): ReactNode {
  const { live: text, recording } = useText();
  const { fixed } = useNumbers();
  const units = useUnits();
  const rows = CHANNEL_ORDER.flatMap((name) => channels.filter((channel) => channel.name === name));
  const now = (name: (typeof rows)[number]['name']): string => {
    const value = data.latest(name);
    if (value === undefined) return recording.chart.absent;
    const shown = shownAs(name, units);
    return `${fixed(toShown(value, shown), shown.decimals)}\u00a0${shown.unit}`;
  };
  return (
    <div className="table-scroll">
      <table>
        <caption className="visually-hidden">{text.channels.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{text.channels.name}</th>
            <th scope="col" className="n">
              {text.channels.now}
            </th>
            <th scope="col" className="n">
              {text.channels.rate}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, rateHz }) => (
            <tr key={name}>
              <th scope="row">{recording.channels[name]}</th>
              <td className="n">{now(name)}</td>
              <td className="n">{fixed(rateHz, 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
