/** Recordings that could be made, with what the simulator expects of each. */
import type { ReactNode } from 'react';
import { Button } from '../kit/button.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useCheckWords } from './check-words.ts';
import type { PlayedRecordings } from './planner-worker.ts';

/** One that settles less of what is open is not worth its place. */
const LEAST = 0.02;

interface Props {
  readonly played: PlayedRecordings;
  readonly minutesOf: (id: string) => number;
  readonly onChoose: (id: string) => void;
}

export function RecordingsWorth({ played, minutesOf, onChoose }: Props): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const { percent } = useNumbers();
  const { check, whole } = useCheckWords();
  const shown = played.worth.filter(({ settles }) => settles >= LEAST);
  return (
    <div className="stack">
      <h4>{words.played}</h4>
      {!played.isLast && (
        <p className="quiet" role="status">
          {words.playing(played.done)}
        </p>
      )}
      {played.isLast && shown.length === 0 && <p>{words.playedNone}</p>}
      {shown.length > 0 && (
        <>
          <ul className="rows recordings-worth">
            {shown.map(({ id, settles }) => (
              <li key={id}>
                <Button kind="bare" onClick={() => onChoose(id)}>
                  {check(id).name}
                </Button>{' '}
                <strong className="print-only">{check(id).name}</strong>{' '}
                <span className="small quiet">
                  {words.min(whole(minutesOf(id)))} · {words.settles(percent(settles))}
                </span>
              </li>
            ))}
          </ul>
          <p className="small quiet">{words.playedWords}</p>
        </>
      )}
    </div>
  );
}
