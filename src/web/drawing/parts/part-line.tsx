import { type ReactNode, useSyncExternalStore } from 'react';
import type { PartId } from '../../../system/parts.ts';
import { useText } from '../../text/language.ts';
import type { Playback } from '../player/playback.ts';
import { stateOf } from '../player/state-words.ts';
import { useFormats } from '../player/use-formats.ts';
import type { RunView } from '../state/run-view.ts';
import { usePartsText } from './use-parts-text.ts';

interface Props {
  readonly part: PartId;
  readonly view: RunView | undefined;
  readonly playback: Playback;
}

/** Where the details of the chosen part stand on the page. */
export const PART_ANCHOR = 'chosen-part';

/** The chosen part in a line right under the drawing, with the way to all that is known of it. */
export function PartLine({ part, view, playback }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const about = usePartsText()?.parts[part];
  useSyncExternalStore(playback.subscribe, playback.get);
  view?.moveTo(playback.timeS);
  const state = view === undefined ? '' : stateOf(view, part, text.drawing, formats);
  const name = text.drawing.parts[part].replaceAll('\u00ad', '');
  return (
    <p className="part-line no-print">
      <strong>
        {name.charAt(0).toLocaleUpperCase() + name.slice(1)}
        {state === '' ? '' : `, ${state}`}
        {'. '}
      </strong>
      {about?.does} <a href={`#${PART_ANCHOR}`}>{text.drawing.part.more}</a>
    </p>
  );
}
