import { useEffect, useState } from 'react';
import type { PlayedRun } from '../../simulation/played-run.ts';
import { Playback } from './playback.ts';
import { tempoFor } from './transport.tsx';

/** Phases in which most is to be seen, best first: a picture at rest begins in the middle of one. */
const TELLING = ['hold', 'tank-pump', 'sealed', 'purge', 'filling', 'vented'] as const;

/** One clock, set anew when another procedure is played; a fault's size leaves it where it is. */
export function usePlayback(run: PlayedRun | undefined, longestS: number, key: string): Playback {
  const [playback] = useState(() => new Playback());
  const [begun, setBegun] = useState('');
  useEffect(() => () => playback.stop(), [playback]);
  useEffect(() => {
    if (run === undefined) return;
    playback.setDuration(longestS);
    if (begun === key) return;
    setBegun(key);
    playback.setTempo(tempoFor(longestS));
    const kind = TELLING.find((k) => run.steps.some((s) => s.phase === k));
    const step = run.steps.find((s) => s.phase === kind);
    playback.goTo(step === undefined ? 0 : step.fromS + 0.4 * (step.toS - step.fromS));
  }, [run, longestS, key, begun, playback]);
  return playback;
}
