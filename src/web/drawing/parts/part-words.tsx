import { type ReactNode, useId, useState, useSyncExternalStore } from 'react';
import { PART_NOTES } from '../../../system/part-notes.ts';
import type { PartId } from '../../../system/parts.ts';
import { Button } from '../../kit/button.tsx';
import { Caution } from '../../kit/caution.tsx';
import { useText } from '../../text/language.ts';
import type { Playback } from '../player/playback.ts';
import { passageOf, stateOf } from '../player/state-words.ts';
import { useFormats } from '../player/use-formats.ts';
import { CloseUp, HAS_CLOSE_UP } from '../sections/close-up.tsx';
import type { RunView } from '../state/run-view.ts';
import { openShare, valveState } from '../state/valve-state.ts';
import { PART_ANCHOR } from './part-line.tsx';
import { usePartsText } from './use-parts-text.ts';

interface Props {
  readonly part: PartId;
  readonly view: RunView | undefined;
  readonly playback: Playback;
  readonly children?: ReactNode;
}

/** What is known of a part: what it does, how it fails, how it is checked, what to mind. */
export function PartWords({ part, view, playback, children }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const known = usePartsText();
  const heading = useId();
  const [isClose, setClose] = useState(false);
  useSyncExternalStore(playback.subscribe, playback.get);
  const words = text.drawing.part;
  const about = known?.parts[part];
  view?.moveTo(playback.timeS);
  const state = view === undefined ? '' : stateOf(view, part, text.drawing, formats);
  const passage = view === undefined ? undefined : passageOf(view, part);
  const valve = view === undefined || passage === undefined ? undefined : valveState(view, passage);
  const { codes, cautions } = PART_NOTES[part];
  return (
    <section className="part-words" id={PART_ANCHOR} aria-labelledby={heading}>
      <h3 id={heading}>{upper(text.drawing.parts[part])}</h3>
      {about !== undefined && (
        <dl>
          {state !== '' && (
            <>
              <dt>{words.now}</dt>
              <dd>
                <strong>{state}</strong>
              </dd>
            </>
          )}
          <dt>{words.does}</dt>
          <dd>{about.does}</dd>
          <dt>{words.fails}</dt>
          <dd>{about.fails}</dd>
          <dt>{words.shows}</dt>
          <dd>{about.shows}</dd>
          <dt>{words.checked}</dt>
          <dd>{about.checked}</dd>
          {about.limits !== undefined && (
            <>
              <dt>{words.limits}</dt>
              <dd>
                {about.limits.text} <span className="quiet">({words.marks[about.limits.mark]})</span>
              </dd>
            </>
          )}
          <dt>{words.repair}</dt>
          <dd>{about.repair}</dd>
          {codes.length > 0 && (
            <>
              <dt>{words.code}</dt>
              <dd>{codes.join(' ')}</dd>
            </>
          )}
        </dl>
      )}
      {known !== undefined && (
        <Caution>
          <ul>
            {cautions.map((caution) => (
              <li key={caution}>{known.cautions[caution]}</li>
            ))}
            <li>{words.defer}</li>
          </ul>
        </Caution>
      )}
      {children}
      {HAS_CLOSE_UP.includes(part) && (
        <>
          <div className="buttons">
            <Button aria-expanded={isClose} onClick={() => setClose(!isClose)}>
              {text.drawing.choose.closeUp}
            </Button>
          </div>
          {isClose && <CloseUp part={part} isOpen={valve !== undefined && openShare(valve) > 0} />}
        </>
      )}
    </section>
  );
}

const upper = (words: string): string => {
  const plain = words.replaceAll('\u00ad', '');
  return plain.charAt(0).toLocaleUpperCase() + plain.slice(1);
};
