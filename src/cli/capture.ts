/** `capture`: records a car live into a capture file; `capture --demo` does so from a simulated car. */

import { existsSync, rmSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { CaptureFile } from '../capture/capture-file.ts';
import { LiveSession, type LiveState } from '../capture/live-session.ts';
import { openPort, USUAL_PORT } from '../capture/open-port.ts';
import type { ServedCar } from '../capture/simulated-car/serve-car.ts';
import type { LayoutId } from '../system/car.ts';
import { captureInWords } from './capture-words.ts';
import { EXIT } from './exit-codes.ts';
import { cannotWrite, Failure } from './failure.ts';
import { printJson, printText, remark } from './output.ts';
import { ownSignals } from './stop-signals.ts';

export interface CaptureOptions {
  readonly port?: string;
  readonly out: string;
  readonly seconds?: number;
  readonly bitRate?: number;
  readonly baudRate?: number;
  readonly clearCodes?: boolean;
  readonly yes?: boolean;
  readonly demo?: LayoutId;
  readonly json?: boolean;
}

const REPORT_EVERY_MS = 5000;

/** What service $04 does, said before it is done. From memory (SAE J1979; 13 CCR 1968.2(d)(2.5)). */
const CLEAR_WORDS = `Clearing codes (service $04)
  erases: confirmed and pending codes, the freeze frame, the results of service $06, the counts since clear;
          every monitor that does not run all the time goes back to "not run".
  keeps:  permanent codes and the in-use counters. They go only after the monitor has run and passed.
  It repairs nothing and is no way to pass an inspection: a car that was just cleared is sent away as not ready.
  Do it after the repair and after everything above has been saved. Vehicle service information and local rules win.`;

async function makeDemo(layout: LayoutId): Promise<ServedCar> {
  const { makeCar } = await import('../capture/simulated-car/make-car.ts');
  const { serveCar } = await import('../capture/simulated-car/serve-car.ts');
  const leak = { kind: 'leak', place: 'cap', size: 0.5e-3 } as const;
  return await serveCar(makeCar({ layout, faults: [leak], codes: ['P0456'], incomplete: true }));
}

async function mayClear(options: CaptureOptions): Promise<boolean> {
  remark(CLEAR_WORDS);
  if (options.yes === true) return true;
  if (process.stdin.isTTY !== true) {
    remark(
      'Nothing was cleared: there is no terminal to ask on. Give --yes beside --clear-codes to say that you have read this.',
    );
    return false;
  }
  const questions = createInterface({ input: process.stdin, output: process.stderr });
  const answer = await questions.question(
    'Type "clear" to clear the codes of this car now, anything else to leave them: ',
  );
  questions.close();
  return answer.trim().toLowerCase() === 'clear';
}

/** Says each change of state once: an adapter that is not there is tried every two seconds, and that is not said each time. */
function tellChanges() {
  let trouble: string | undefined;
  let last = '';
  return {
    tell: (state: LiveState, said: string): void => {
      const words = said.replace(/^Error: /, '');
      const isKnown = state === 'waiting' ? words === trouble : state === 'connecting' && trouble !== undefined;
      if (state === 'waiting') trouble = words;
      else if (state === 'sampling') trouble = undefined;
      if (!isKnown && words !== last) remark(`vaporwright: ${words}`);
      last = words;
    },
    last: (): string => last,
    trouble: (): string | undefined => trouble?.replace(/; trying again$/, ''),
  };
}

export async function captureCommand(options: CaptureOptions): Promise<void> {
  ownSignals();
  const car = options.demo === undefined ? undefined : await makeDemo(options.demo);
  const address = car?.address ?? options.port;
  if (address === undefined)
    throw new Failure(EXIT.usage, 'no adapter was named', {
      expected: '--port /dev/ttyACM0, --port tcp://host:port or --port can0; or --demo engine-vacuum',
    });
  const isNew = !existsSync(options.out);
  let file: CaptureFile;
  try {
    file = new CaptureFile(options.out);
  } catch (error) {
    throw cannotWrite(options.out, error);
  }
  const ports = { bitRate: options.bitRate ?? USUAL_PORT.bitRate, baudRate: options.baudRate ?? USUAL_PORT.baudRate };
  let stopped = (): void => {};
  const tellOnce = tellChanges();
  const session = new LiveSession({
    open: () => openPort(address, ports),
    file,
    label: options.out,
    onState: (state, words) => {
      tellOnce.tell(state, words);
      // A full disk ends the recording from within.
      if (state === 'stopped') stopped();
    },
  });
  remark(`Recording from ${address} into ${options.out}. Commands to the car only read. Ctrl-C ends it.`);
  session.start();
  const beat = setInterval(() => {
    if (session.state === 'sampling') remark(`  ${session.samples} samples`);
  }, REPORT_EVERY_MS);
  let timer: NodeJS.Timeout | undefined;
  await new Promise<void>((resolve) => {
    stopped = resolve;
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
    if (options.seconds !== undefined) timer = setTimeout(resolve, options.seconds * 1000);
  });
  clearTimeout(timer);
  clearInterval(beat);
  let cleared = false;
  // All that the car said is in the file by now.
  if (options.clearCodes === true && session.state === 'sampling' && (await mayClear(options))) {
    const replies = await session.clearCodes();
    cleared = replies.some(({ message }) => message[0] === 0x44);
    remark(cleared ? 'The car says that it has cleared its codes.' : 'The car did not clear its codes.');
  }
  const cannotGoOn = session.state === 'stopped' ? tellOnce.last() : undefined;
  await session.stop();
  file.close();
  await car?.close();
  const reading = session.reading();
  if (cannotGoOn !== undefined)
    throw new Failure(EXIT.output, cannotGoOn, {
      file: options.out,
      advice: 'What came before stands in the file. Make room, then go on into the same file.',
    });
  if (session.samples === 0 && reading.units.length === 0) {
    if (isNew) rmSync(options.out, { force: true });
    throw new Failure(EXIT.input, 'nothing was recorded', {
      found: tellOnce.trouble() ?? 'no control unit had answered when the recording ended',
      expected: `an adapter at ${address} and a car with its key on`,
      advice: isNew
        ? 'No file was left behind.'
        : 'The file that was there before is as it was, but for marks of the pause.',
    });
  }
  if (options.json === true)
    printJson({
      schema: 'vaporwright-capture-1',
      file: options.out,
      cleared,
      reconnections: session.reconnections,
      status: reading.status,
      codes: reading.codes,
      codesRead: reading.codesRead,
      results: reading.results,
      freezeFrames: reading.freezeFrames,
      report: reading.report,
    });
  else
    printText(
      [...captureInWords(reading), '', `Written: ${options.out}. Read it with: vaporwright read ${options.out}`].join(
        '\n',
      ),
    );
}
