import { type ReactNode, useEffect, useState, useSyncExternalStore } from 'react';
import { useText } from '../../text/language.ts';
import type { RunView } from '../state/run-view.ts';
import { nowSentences } from './now-words.ts';
import type { Playback } from './playback.ts';
import { useFormats } from './use-formats.ts';

/** How often the words follow the picture while it plays, ms; they are spoken only when it rests. */
const EVERY_MS = 400;

interface Props {
  readonly view: RunView;
  readonly playback: Playback;
  readonly name?: string;
  readonly isSpoken: boolean;
}

/** What happens now, in words: the picture's equal. */
export function Now({ view, playback, name, isSpoken }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const state = useSyncExternalStore(playback.subscribe, playback.get);
  const [timeS, setTimeS] = useState(playback.timeS);
  useEffect(() => {
    let last = 0;
    return playback.onFrame((at, nowMs, isResting) => {
      if (!isResting && nowMs - last < EVERY_MS) return;
      last = nowMs;
      setTimeS(at);
    });
  }, [playback]);
  view.moveTo(timeS);
  const { durationS } = view.run;
  const step = view.run.steps[view.step()];
  const sentences = nowSentences(view, text, formats, Math.max(0.5, durationS / 60));
  const phase = step === undefined ? '' : text.trade.phases[step.phase];
  return (
    <div className="now" aria-live={isSpoken && !state.isPlaying ? 'polite' : 'off'}>
      <p className="when">
        {name !== undefined && <strong>{name}. </strong>}
        {formats.time(timeS, durationS)}, {phase}
        {step?.outcome !== undefined &&
          `, ${text.drawing.phaseEnded(text.drawing.outcomes[step.outcome] ?? step.outcome)}`}
      </p>
      <p>{sentences.join(' ')}</p>
    </div>
  );
}
