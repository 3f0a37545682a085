/** Runs in the browser's own worker thread, so that the page never waits for a simulation. */
import { play } from './play.ts';
import type { PlayRequest, WorkerAnswer } from './played-run.ts';

interface Port {
  onmessage: ((event: { readonly data: { readonly id: number; readonly request: PlayRequest } }) => void) | null;
  postMessage(answer: WorkerAnswer, transfer: Transferable[]): void;
}
const port = self as unknown as Port;

port.onmessage = ({ data: { id, request } }) => {
  try {
    const run = play(request, () => performance.now());
    const arrays = [
      run.timeS,
      ...Object.values(run.traces),
      ...Object.values(run.passedKg),
      ...Object.values(run.readings),
    ];
    port.postMessage(
      { id, run },
      arrays.map((array) => array.buffer as ArrayBuffer),
    );
  } catch (error) {
    port.postMessage({ id, error: error instanceof Error ? error.message : String(error) }, []);
  }
};
