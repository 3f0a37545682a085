import type { ReactNode } from 'react';
import { Message } from '../../kit/message.tsx';
import type { PlayedRun } from '../../simulation/played-run.ts';
import { useText } from '../../text/language.ts';
import { useFormats } from './use-formats.ts';

interface Props {
  /** What went wrong outside the simulation. */
  readonly error: string | undefined;
  readonly run: PlayedRun | undefined;
}

/** Why there is no run, or none to its end. */
export function RunFailed({ error, run }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const words = text.drawing.failed;
  if (error !== undefined) return <Message name={words.title}>{error}</Message>;
  const failure = run?.failure;
  if (run === undefined || failure === undefined) return null;
  const part = failure.part === 'ledger' ? '' : text.drawing.parts[failure.part].replaceAll('\u00ad', '');
  return (
    <Message name={words.title}>
      <p>
        {words.at(formats.time(failure.timeS, run.durationS), part)} {words.reasons[failure.reason]}
      </p>
      <p className="small">{words.advice}</p>
    </Message>
  );
}
