import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { faultKind } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import type { PartId } from '../../../system/parts.ts';
import { drawnNetwork } from '../../simulation/play.ts';
import type { DrawnSystem, PlayedRun, PlayRequest } from '../../simulation/played-run.ts';
import type { Playable } from '../../simulation/procedures.ts';
import type { RecordedPlan } from '../../simulation/recorded-plan.ts';
import { usePlayed } from '../../simulation/use-played.ts';
import { LiveView } from '../state/live-view.ts';
import { RunView } from '../state/run-view.ts';

export interface Playing {
  /** The newest run, sketches of a moving slider included. */
  readonly live: LiveView;
  /** The run that the page's words are about: the newest, but while a slider moves only now and then. */
  readonly view: RunView | undefined;
  readonly run: PlayedRun | undefined;
  readonly error: string | undefined;
  /** Plays another size of the fault at once; what rests is wished for by way of the page's own state. */
  readonly sketch: (fault: Fault) => void;
}

export interface PlayingWish {
  readonly system: DrawnSystem;
  readonly fault: Fault | undefined;
  readonly procedure: Playable;
  readonly recorded?: RecordedPlan | undefined;
}

/** Parts in line with a valve: the network has one passage for both. */
const LINES: ReadonlySet<PartId> = new Set(['ventFilter', 'vapourLine']);
/** How often words and numbers beside the drawing follow a slider that moves, ms. Judgement: they are read. */
const TOLD_EVERY_MS = 250;

/** Same system, procedure and kind of fault: another size of it may be shown until its own run comes. */
const drawnKey = ({ system, procedure, recorded }: PlayingWish | PlayRequest, fault: Fault | undefined): string =>
  JSON.stringify([system, procedure, recorded?.id, recorded?.draw, fault?.kind, fault?.place]);

function requestOf({ system, procedure, recorded }: PlayingWish, fault: Fault | undefined): PlayRequest {
  return {
    system,
    procedure,
    faults: fault === undefined ? [] : [fault],
    ...(recorded === undefined ? {} : { recorded }),
    isCoarse: false,
  };
}

/** A run of a system with a fault, kept up to date, with a view on it. */
export function usePlaying(wish: PlayingWish | undefined): Playing {
  const [live] = useState(() => new LiveView());
  const [told, setTold] = useState<RunView>();
  const toldMs = useRef(0);
  const key = wish === undefined ? '' : drawnKey(wish, wish.fault);
  const system = wish?.system;
  const sound = useMemo(() => (system === undefined ? undefined : drawnNetwork(system, [])), [system]);
  const now = useRef({ wish, key, sound });
  now.current = { wish, key, sound };

  const take = (run: PlayedRun): void => {
    const { request, isCoarse } = run;
    const { faults } = request;
    // A run of another system or procedure is not shown under this one's name.
    if (now.current.sound === undefined || drawnKey(request, faults[0]) !== now.current.key) return;
    const network = drawnNetwork(request.system, faults);
    const hasLine = faults.some((f) => LINES.has(faultKind(f.kind).part));
    const view = new RunView(run, network, now.current.sound, hasLine ? now.current.sound : network);
    live.show(view);
    const nowMs = performance.now();
    if (isCoarse && nowMs - toldMs.current < TOLD_EVERY_MS) return;
    toldMs.current = nowMs;
    setTold(view);
  };
  const request = wish === undefined ? undefined : requestOf(wish, wish.fault);
  const { error, sketch } = usePlayed(request, `${key} ${wish?.fault?.size}`, take);
  const view = told !== undefined && drawnKey(told.run.request, told.run.request.faults[0]) === key ? told : undefined;
  useEffect(() => {
    const shown = live.get()?.run.request;
    if (shown !== undefined && drawnKey(shown, shown.faults[0]) !== key) live.show(undefined);
  }, [live, key]);

  const sketchFault = useCallback(
    (fault: Fault) => {
      const { wish: current } = now.current;
      if (current !== undefined) sketch(requestOf(current, fault));
    },
    [sketch],
  );
  return { live, view, run: view?.run, error, sketch: sketchFault };
}
