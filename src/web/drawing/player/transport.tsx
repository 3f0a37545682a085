import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useSyncExternalStore } from 'react';
import type { StepRecord } from '../../../simulation/procedure.ts';
import { Button } from '../../kit/button.tsx';
import { SelectField } from '../../kit/fields.tsx';
import { useText } from '../../text/language.ts';
import type { Playback } from './playback.ts';
import { useFormats } from './use-formats.ts';

const TEMPI = [0.25, 1, 4, 16] as const;
const LONG_TEMPI = [60, 600] as const;

/** Tempi worth offering for a run of this length: the slow ones always, minutes a second where it lasts hours. */
const tempiFor = (durationS: number): readonly number[] => [
  ...TEMPI,
  ...LONG_TEMPI.filter((tempo) => durationS / tempo > 8),
];

/** A tempo at which a run is seen within two minutes. */
export const tempoFor = (durationS: number): number =>
  tempiFor(durationS).find((tempo) => tempo >= 1 && durationS / tempo <= 150) ?? tempiFor(durationS).at(-1)!;

interface Props {
  readonly playback: Playback;
  readonly steps: readonly StepRecord[];
}

/** Play, pause, scrub, tempo, and steps from phase to phase. */
export function Transport({ playback, steps }: Props): ReactNode {
  const state = useSyncExternalStore(playback.subscribe, playback.get);
  const text = useText();
  const formats = useFormats();
  const words = text.drawing.controls;
  const slider = useRef<HTMLInputElement>(null);
  const output = useRef<HTMLOutputElement>(null);
  const id = useId();

  useEffect(
    () =>
      playback.onFrame((timeS) => {
        const all = playback.get().durationS;
        const told = words.timeOf(formats.time(timeS, all), formats.time(all, all));
        if (slider.current !== null) {
          slider.current.value = String(timeS);
          slider.current.setAttribute('aria-valuetext', told);
        }
        if (output.current !== null && output.current.textContent !== told) output.current.textContent = told;
      }),
    [playback, formats, words],
  );

  const stepTo = (direction: 1 | -1): void => {
    const now = playback.timeS;
    const starts = steps.map((s) => s.fromS);
    const target =
      direction === 1
        ? (starts.find((s) => s > now + 1e-3) ?? state.durationS)
        : ([...starts].reverse().find((s) => s < now - 0.02 * state.durationS) ?? 0);
    if (state.isPlaying) playback.pause();
    playback.goTo(target);
  };

  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'PageDown' || event.key === 'PageUp') {
      event.preventDefault();
      stepTo(event.key === 'PageDown' ? 1 : -1);
    }
  };

  return (
    <div className="transport no-print">
      <div className="line">
        <Button onClick={() => (state.isPlaying ? playback.pause() : playback.play())} className="play">
          {state.isPlaying ? words.pause : words.play}
        </Button>
        <input
          ref={slider}
          id={id}
          type="range"
          min={0}
          max={state.durationS}
          step={state.durationS / 100 || 1}
          defaultValue={0}
          aria-label={words.time}
          title={words.keys}
          onKeyDown={onKey}
          onInput={(event) => playback.goTo(Number(event.currentTarget.value), true)}
          onChange={(event) => playback.goTo(Number(event.currentTarget.value))}
        />
        <output ref={output} htmlFor={id} className="time" aria-live="off" />
      </div>
      <div className="line">
        <Button onClick={() => stepTo(-1)}>{words.before}</Button>
        <Button onClick={() => stepTo(1)}>{words.next}</Button>
        <SelectField
          label={words.speed}
          value={String(state.tempo)}
          options={tempiFor(state.durationS).map((tempo) => ({ value: String(tempo), name: words.speeds(tempo) }))}
          onChange={(tempo) => playback.setTempo(Number(tempo))}
        />
      </div>
    </div>
  );
}
