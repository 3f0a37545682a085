import { useMemo } from 'react';
import type { Fault } from '../../../system/faults/fault.ts';
import { drawnNetwork } from '../../simulation/play.ts';
import type { DrawnSystem, PlayedRun } from '../../simulation/played-run.ts';
import type { Playable } from '../../simulation/procedures.ts';
import { type Played, usePlayed } from '../../simulation/use-played.ts';
import { RunView } from '../state/run-view.ts';

export interface Playing extends Played {
  readonly view: RunView | undefined;
}

export interface PlayingWish {
  readonly system: DrawnSystem;
  readonly fault: Fault | undefined;
  readonly procedure: Playable;
  readonly draw?: { readonly targetGaugePa?: number; readonly drawTimeOutS?: number };
  readonly isDragging: boolean;
}

/** A run of a system with a fault, kept up to date, with a view on it. */
export function usePlaying(wish: PlayingWish | undefined): Playing {
  const request =
    wish === undefined
      ? undefined
      : {
          system: wish.system,
          faults: wish.fault === undefined ? [] : [wish.fault],
          procedure: wish.procedure,
          ...(wish.draw === undefined ? {} : { draw: wish.draw }),
          isCoarse: false,
        };
  const played = usePlayed(request, wish?.isDragging ?? false);
  const key = JSON.stringify([wish?.system, wish?.fault]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for system and fault
  const networks = useMemo(
    () =>
      wish === undefined
        ? undefined
        : {
            own: drawnNetwork(wish.system, wish.fault === undefined ? [] : [wish.fault]),
            sound: drawnNetwork(wish.system, []),
          },
    [key],
  );
  const { run } = played;
  const view = useMemo(() => {
    if (
      run === undefined ||
      networks === undefined ||
      !fits(
        run,
        networks.own.spaces.map((s) => s.id),
      )
    )
      return undefined;
    return new RunView(run, networks.own, networks.sound);
  }, [run, networks]);
  return { ...played, view };
}

/** A run of the layout before must not be shown on the new one. */
const fits = (run: PlayedRun, spaces: readonly string[]): boolean =>
  spaces.every((id) => `${id}.gaugePa` in run.traces);
