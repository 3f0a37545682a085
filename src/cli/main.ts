/** Entry of the command line: runs one command, turns every failure into words and an exit code. */
import { type Command, CommanderError } from 'commander';
import { EXIT } from './exit-codes.ts';
import { asFailure, Failure, failureAsJson, failureAsText } from './failure.ts';
import { printAsIs } from './output.ts';
import { buildProgram } from './program.ts';
import { stopOnSignals } from './stop-signals.ts';

/** Sub-commands inherit exit and output behaviour only when told. */
function quieten(program: Command, isJson: boolean): void {
  for (const command of [program, ...program.commands]) {
    command.exitOverride();
    command.configureOutput({ writeOut: printAsIs, ...(isJson ? { writeErr: () => {} } : {}) });
  }
}

function usageFailure(error: CommanderError): Failure {
  return new Failure(EXIT.usage, error.message.replace(/^error: /, ''), { advice: 'Run with --help for the options.' });
}

/** Runs one command line and sets the exit code. */
export async function main(argv: readonly string[]): Promise<void> {
  const isJson = argv.includes('--json');
  const program = buildProgram();
  quieten(program, isJson);
  stopOnSignals(isJson);
  // Who closes the pipe of remarks and progress wants none.
  process.stderr.on('error', () => {});
  try {
    if (argv.length <= 2) {
      program.outputHelp();
      return;
    }
    await program.parseAsync(argv);
  } catch (thrown) {
    if (thrown instanceof CommanderError) {
      // Help and version end in this way too, with code 0.
      if (thrown.exitCode === 0) return;
      if (isJson) process.stderr.write(`${failureAsJson(usageFailure(thrown))}\n`);
      process.exitCode = EXIT.usage;
      return;
    }
    const failure = asFailure(thrown);
    process.stderr.write(`${isJson ? failureAsJson(failure) : failureAsText(failure)}\n`);
    if (failure.exitCode === EXIT.internal && process.env.VAPORWRIGHT_STACK !== undefined) {
      process.stderr.write(`${failure.stack ?? ''}\n`);
    }
    process.exitCode = failure.exitCode;
  }
}
