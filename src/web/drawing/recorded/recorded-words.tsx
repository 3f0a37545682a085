import type { ReactNode } from 'react';
import type { PlayedRun } from '../../simulation/played-run.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { NBSP } from '../../text/unbroken.ts';
import { useUnits } from '../../units/units.ts';
import type { Recorded } from './use-recorded.ts';

interface Props {
  readonly recorded: Recorded;
  readonly run: PlayedRun | undefined;
}

/** What the drawing takes from the recording, and what it had to assume. */
export function RecordedWords({ recorded, run }: Props): ReactNode {
  const { day, event, plan, span } = recorded;
  const { drawing } = useText();
  const { fixed, list, percent, duration } = useNumbers();
  const units = useUnits();
  const words = drawing.panel;
  const { channels } = event;
  const said = (text: string, isKnown: boolean): string => (isKnown ? text : words.assumed(text));
  return (
    <p className="small quiet">
      {words.day(
        list([
          said(words.level(percent(day.fuelLevel)), day.levelKnown),
          said(words.fuel(units.print('temperature', day.fuelTemperatureK)), day.fuelTemperatureKnown),
          said(
            words.outside(units.print('temperature', day.ambientTemperatureK)),
            channels.ambientTemperatureK !== undefined,
          ),
          said(words.air(`${fixed(day.ambientAbsPa / 1000, 1)}${NBSP}kPa`), channels.barometricPa !== undefined),
        ]),
      )}{' '}
      {plan.draw !== undefined && run !== undefined && `${run.isDrawMatched ? words.matched : words.unmatched} `}
      {words.notFitted}
      {!span.isWhole && ` ${words.part(duration(span.toS - span.fromS))}`}
    </p>
  );
}
