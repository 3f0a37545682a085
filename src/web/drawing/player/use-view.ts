import { useMemo } from 'react';
import { faultKind } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import type { PartId } from '../../../system/parts.ts';
import { drawnNetwork } from '../../simulation/play.ts';
import type { DrawnSystem } from '../../simulation/played-run.ts';
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

/** Parts in line with a valve: the network has one passage for both. */
const LINES: ReadonlySet<PartId> = new Set(['ventFilter', 'vapourLine']);

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
  const key = JSON.stringify([wish?.system, wish?.procedure, wish?.fault?.kind, wish?.fault?.place]);
  // A run of another system or procedure is not shown under this one's name; another size of the fault is, until its own comes.
  const { run } = played;
  const view = useMemo(() => {
    if (run === undefined) return undefined;
    const { system, procedure, faults } = run.request;
    if (JSON.stringify([system, procedure, faults[0]?.kind, faults[0]?.place]) !== key) return undefined;
    const ofValves = faults.filter((f) => !LINES.has(faultKind(f.kind).part));
    return new RunView(run, drawnNetwork(system, faults), drawnNetwork(system, []), drawnNetwork(system, ofValves));
    // The key stands for the wish, which is made anew at every turn.
  }, [run, key]);
  return { ...played, run: view?.run, view };
}
