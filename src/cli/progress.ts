/** Progress of long work on stderr: a moving line on a terminal, few plain lines elsewhere, nothing when quick. */
const QUIET_MS = 400;
const TERMINAL_MS = 80;
const STEP = 0.25;

export interface Progress {
  readonly report: (fraction: number, what: string) => void;
  readonly end: () => void;
}

export function startProgress(isSilent: boolean): Progress {
  const started = performance.now();
  const isTerminal = process.stderr.isTTY === true;
  let lastAt = 0;
  let nextStep = STEP;
  let isLineOpen = false;
  return {
    report: (fraction, what) => {
      const now = performance.now();
      if (isSilent || now - started < QUIET_MS) return;
      if (isTerminal) {
        if (now - lastAt < TERMINAL_MS) return;
        lastAt = now;
        process.stderr.write(`\r\x1b[K${String(Math.round(fraction * 100)).padStart(3)} %  ${what}`);
        isLineOpen = true;
      } else if (fraction >= nextStep) {
        while (nextStep <= fraction) nextStep += STEP;
        process.stderr.write(`${String(Math.round(fraction * 100)).padStart(3)} %  ${what}\n`);
      }
    },
    end: () => {
      if (isLineOpen) process.stderr.write('\r\x1b[K');
      isLineOpen = false;
    },
  };
}
