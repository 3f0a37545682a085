/** What the program's end says to the shell; listed in the help and in the README. */
export const EXIT = {
  /** The command did its work; any verdict of a finding counts as done. */
  done: 0,
  /** A fault of the program itself. */
  internal: 1,
  /** The command line was not understood. */
  usage: 2,
  /** An input could not be found or read. */
  input: 3,
  /** An output could not be written. */
  output: 4,
  /** Stopped by Ctrl-C. */
  cancelled: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

export const EXIT_HELP = `Exit codes: 0 done (whatever the verdict), 1 internal fault, 2 usage, 3 input not readable,
4 cannot write, 130 cancelled.`;
