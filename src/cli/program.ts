/** The command line: words and options here; what a command needs is loaded when it runs, so that help is quick. */
import { Command, Option } from 'commander';
import { CIRCUMSTANCE_IDS } from '../checks/circumstances.ts';
import { LAYOUTS } from '../system/car.ts';
import { COMPLAINTS } from './complaints.ts';
import { EXIT_HELP } from './exit-codes.ts';
import {
  bitRate,
  checkList,
  codeList,
  figureChange,
  modelYear,
  numberWithin,
  portNumber,
  positiveNumber,
  share,
  timeOfDay,
  timeZone,
  wholeNumber,
} from './option-values.ts';
import { PROGRAM_VERSION } from './version.ts';

const examples = (...lines: readonly string[]): string =>
  `\nExamples:\n${lines.map((line) => `  ${line}`).join('\n')}\n`;

const JSON_OPTION = ['--json', 'print one JSON object on stdout (format: vaporwright schema)'] as const;

const DATA_OPTION = [
  '--data <folder>',
  'folder of the data (default: VAPORWRIGHT_DATA, or the platform’s folder for a user’s data)',
] as const;

/** Who has no car file yet is told the least that one needs. */
const withCarHint = (text: string, write: (text: string) => void): void =>
  write(
    text.includes("'--car <file>' not specified")
      ? `${text}The least that a car file needs: {"schema": "vaporwright-car-1", "label": "my car", "layout": "engine-vacuum"}\n` +
          'What else may stand in it: vaporwright schema car, and examples/invented-estate.car.json.\n'
      : text,
  );

/** Options that say what the recordings are; the same for `diagnose` and `report`. */
const withJobOptions = (command: Command): Command =>
  command
    .option('--codes <list>', 'stored trouble codes, separated by commas', codeList)
    .addOption(new Option('--complaint <type>', 'what the owner noticed').choices(Object.keys(COMPLAINTS)))
    .option('--notes <file>', 'notes on the recordings (JSON, format: vaporwright schema notes)')
    .option('--mapping <file>', 'columns and units of the recordings (JSON, format: vaporwright schema mapping)');

export function buildProgram(): Command {
  const program = new Command('vaporwright')
    .description('Finds faults in the fuel-vapour side of petrol cars from recordings of their self-tests.')
    .version(PROGRAM_VERSION, '--version', 'print the version')
    .showHelpAfterError('(run with --help for the options)')
    .addHelpText(
      'after',
      `\nWhere the examples say "vaporwright", write "npm start --" in a clone, or "node bin/vaporwright.mjs".\n\n${EXIT_HELP}\n`,
    )
    // Needed for `bench`, whose own options are passed on untouched.
    .enablePositionalOptions();

  program
    .command('serve')
    .summary('open the workbench in a browser on this machine')
    .description('Opens the workbench: prints the address of its pages and runs until Ctrl-C.')
    .option(...DATA_OPTION)
    .option('--port <number>', 'port to listen on; a usual one, or a free one where that is taken', portNumber)
    .option('--host <address>', 'address to listen on; beyond this machine people sign in (default: this machine)')
    .option('--public-url <url>', 'address by which people reach it, when a proxy stands in front')
    .option('--no-demo', 'do not put the invented demo jobs into a new data folder')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples('vaporwright serve', 'vaporwright serve --data ~/shop --port 8080', 'vaporwright serve --host 0.0.0.0'),
    )
    .action(async (options) => (await import('./serve.ts')).serveCommand(options));

  program
    .command('backup')
    .summary('write everything of the workbench into one file')
    .description('Writes all jobs, recordings, accounts and settings into one file, also while the workbench is open.')
    .argument('<file>', 'where the backup goes')
    .option(...DATA_OPTION)
    .option(...JSON_OPTION)
    .addHelpText('after', examples('vaporwright backup /media/stick/monday.backup'))
    .action(async (file: string, options) => (await import('./backup.ts')).backupCommand(file, options));

  program
    .command('restore')
    .summary('take a backup in')
    .description('Takes a backup in: into an empty data folder, or in place of what is there with --replace.')
    .argument('<file>', 'a file that "backup" or the pages wrote')
    .option(...DATA_OPTION)
    .option('--replace', 'what is there gives way to the backup')
    .option(...JSON_OPTION)
    .addHelpText('after', examples('vaporwright restore --data ~/new-shop /media/stick/monday.backup'))
    .action(async (file: string, options) => (await import('./restore.ts')).restoreCommand(file, options));

  program
    .command('export-job')
    .summary('write one job with its recordings into one file')
    .description('Writes one job with its history, recordings and documents into one JSON file.')
    .argument('<number>', 'number of the job, as at the head of its sheet', wholeNumber)
    .argument('<file>', 'where the file goes')
    .option(...DATA_OPTION)
    .option(...JSON_OPTION)
    .addHelpText('after', examples('vaporwright export-job 17 job-17.json'))
    .action(async (number: number, file: string, options) =>
      (await import('./job-file.ts')).exportJobCommand(number, file, options),
    );

  program
    .command('import-job')
    .summary('take in a job that was exported')
    .description('Takes in a job that was exported here or elsewhere.')
    .argument('<file>', 'a file that "export-job" or the pages wrote')
    .option(...DATA_OPTION)
    .option(...JSON_OPTION)
    .addHelpText('after', examples('vaporwright import-job job-17.json'))
    .action(async (file: string, options) => (await import('./job-file.ts')).importJobCommand(file, options));

  withJobOptions(
    program
      .command('diagnose')
      .summary('say which fault recordings show, how large and how sure')
      .description('Says which fault the recordings of one car show, how large, how sure and why.')
      .argument('<recordings...>', 'recordings of one car (CSV, plain or .gz)')
      .requiredOption('--car <file>', 'what is known of the car (JSON, format: vaporwright schema car)'),
  )
    .configureOutput({ outputError: withCarHint })
    .option('--out <file>', 'also save the whole finding, for "report --finding"')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright diagnose --car car.json hold.csv',
        'vaporwright diagnose --car car.json --json monday.csv.gz tuesday.csv.gz',
        'vaporwright diagnose --car car.json --codes P0456 --complaint smell --out finding.json hold.csv',
      ),
    )
    .action(async (recordings: string[], options) =>
      (await import('./diagnose.ts')).diagnoseCommand(recordings, options),
    );

  withJobOptions(
    program
      .command('report')
      .summary('write the finding as one HTML file and a PDF')
      .description('Writes the finding as one self-contained HTML file and a PDF.')
      .argument('[recordings...]', 'recordings of one car, when no --finding is given')
      .option('--car <file>', 'what is known of the car (JSON)'),
  )
    .option('--finding <file>', 'a finding saved by "diagnose --out", instead of recordings')
    .option('--limits <file>', 'reference sizes to show (JSON, format: vaporwright schema limits)')
    .option('--out <folder>', 'where report.html and report.pdf go', 'vaporwright-report')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright report --car car.json hold.csv',
        'vaporwright report --finding finding.json --out for-the-owner',
        'vaporwright report --finding finding.json --limits our-limits.json',
      ),
    )
    .action(async (recordings: string[], options) => (await import('./report.ts')).reportCommand(recordings, options));

  program
    .command('read')
    .summary('read any recording, show mapping and quality, write our own columns')
    .description('Reads any CSV recording, shows how its columns and units were understood and how good it is.')
    .argument('<recording>', 'CSV file, plain or .gz')
    .option('--out <file>', 'write the recording with our own columns and units')
    .option('--mapping <file>', 'columns and units, instead of guessing (JSON)')
    .option('--car <file>', 'car file; its sensor range turns volts into pressure')
    .option('--notes <file>', 'notes on the recording (JSON)')
    .option('--print-mapping', 'print the mapping as JSON, to edit and give back with --mapping')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright read logger.csv',
        'vaporwright read logger.csv --print-mapping > mapping.json',
        'vaporwright read logger.csv --mapping mapping.json --out hold.csv',
      ),
    )
    .action(async (file: string, options) => (await import('./read.ts')).readCommand(file, options));

  program
    .command('capture')
    .summary('record a car live, or a simulated one')
    .description(
      'Records a car over a CAN adapter (slcan over a serial line or TCP, or a CAN network of Linux) into a capture file. Only reads, but for --clear-codes.',
    )
    .option('--port <address>', 'serial device, tcp://host:port, or a CAN network as can0')
    .requiredOption('--out <file>', 'capture file (candump text); an existing one is added to')
    .option('--seconds <n>', 'end after so long; without it Ctrl-C ends', positiveNumber)
    .option('--bit-rate <n>', 'of the bus: 500000, or 250000', bitRate)
    .option('--baud-rate <n>', 'of the serial line', wholeNumber)
    .addOption(new Option('--demo <layout>', 'a simulated car with a small leak instead of a port').choices(LAYOUTS))
    .option('--clear-codes', 'at the end ask to clear the codes; everything is saved before')
    .option('--yes', 'with --clear-codes: do not ask')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright capture --port /dev/ttyACM0 --out monday.log',
        'vaporwright capture --port tcp://192.168.4.1:35000 --seconds 600 --out drive.log',
        'vaporwright capture --demo engine-vacuum --seconds 20 --out demo.log',
      ),
    )
    .action(async (options) => (await import('./capture.ts')).captureCommand(options));

  program
    .command('readiness')
    .summary('why the monitor has not run, when it will, and whether the car passes')
    .description(
      'Says why the evaporative monitor has not run, when it will, and whether the car passes an inspection.',
    )
    .argument('[recordings...]', 'recordings or bus captures of drives and soaks')
    .requiredOption('--car <file>', 'what is known of the car (JSON)')
    .option('--conditions <file>', 'when its monitor may run (JSON, format: vaporwright schema monitor)')
    .option('--model-year <n>', 'for the inspection', modelYear)
    .option('--rule <name>', 'inspection rule: us-federal or us-evap-only')
    .option('--rule-file <file>', 'local inspection rule (JSON, format: vaporwright schema inspection)')
    .option(
      '--parked-hours <n>',
      'how long it was parked before the first recording',
      numberWithin(0, 10_000, 'a number of hours'),
    )
    .option('--forecast <file>', 'hourly temperatures, one hour a line, as "06:00 4.5"')
    .addOption(new Option('--unit <unit>', 'of temperatures without one').choices(['C', 'F']))
    .option('--level <percent>', 'fuel level now', numberWithin(0, 100, 'a share in percent'))
    .option('--leaves <time>', 'when the owner leaves on most days, as 07:30', timeOfDay)
    .option(
      '--garage <celsius>',
      'temperature where it is parked, when not outdoors',
      numberWithin(-50, 60, 'a temperature in °C'),
    )
    .option('--deadline <date>', 'of the inspection, as 2026-12-04')
    .option('--zone <name>', 'time zone, as Europe/Berlin; of this machine when absent', timeZone)
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright readiness --car car.json --model-year 2012 drive.log',
        'vaporwright readiness --car car.json --forecast hours.txt --level 60 --deadline 2026-12-04',
      ),
    )
    .action(async (recordings: string[], options) =>
      (await import('./readiness.ts')).readinessCommand(recordings, options),
    );

  program
    .command('plan')
    .summary('say what to do next towards a proven repair, and why')
    .description(
      'Says which check or repair to do next, with the least expected time (or money) to a proven repair, and why.',
    )
    .option('--finding <file>', 'a finding saved by "diagnose --out"')
    .option('--car <file>', 'a car without recordings yet; give --codes or --complaint with it')
    .option('--state <file>', 'a plan’s state saved by --out')
    .option('--codes <list>', 'stored trouble codes, separated by commas', codeList)
    .addOption(new Option('--complaint <type>', 'what the owner noticed').choices(Object.keys(COMPLAINTS)))
    .addOption(new Option('--known <what...>', 'what is known of the car’s life').choices(CIRCUMSTANCE_IDS))
    .option('--without <checks>', 'checks that cannot be done here, separated by commas', checkList)
    .option('--money-weight <share>', '0: working minutes alone; 1: the whole bill (default)', share)
    .option('--set <figure=value...>', 'a figure of your shop, as shop.rate=75', figureChange, {})
    .option('--seconds <number>', 'how long to look for a better plan', positiveNumber, 2)
    .option('--recordings', 'also weigh recordings that could be made; they are simulated, which takes some seconds')
    .option('--acknowledge', 'the cautions were read: show the steps')
    .option('--out <file>', 'save where the job stands, for "result" (format: vaporwright schema troubleshooting)')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright plan --finding finding.json --out job.json',
        'vaporwright plan --car car.json --codes P0442 --known "topping off admitted" --without T23,T25',
        'vaporwright plan --state job.json --money-weight 0 --set shop.rate=75',
      ),
    )
    .action(async (options) => (await import('./plan.ts')).planCommand(options));

  program
    .command('result')
    .summary('enter what a check or repair showed, and plan on')
    .description('Enters the result of a check, or a repair that did not hold, and says what to do next.')
    .argument('<step>', 'check (T20) or repair ("purge valve")')
    .argument('[result...]', 'an outcome, or numbers with units as "flow=0.46 L/min"; "not held" for a repair')
    .requiredOption('--state <file>', 'where the job stands, from "plan --out"')
    .option('--seconds <number>', 'how long to look for a better plan', positiveNumber, 2)
    .option('--recordings', 'also weigh recordings that could be made; they are simulated, which takes some seconds')
    .option('--acknowledge', 'the cautions were read: show the steps')
    .option('--out <file>', 'save where the job stands now')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright result T12 falls --state job.json --out job-2.json',
        'vaporwright result T20 "flow=0.46 L/min" "pressure=10 inH2O" --state job.json',
        'vaporwright result "purge valve" not held --state job-2.json',
      ),
    )
    .action(async (step: string, words: string[], options) =>
      (await import('./result.ts')).resultCommand(step, words, options),
    );

  program
    .command('proof')
    .summary('say whether the repair of a job held')
    .description(
      'Says whether the repair of a job held: sizes before and after, with what probability, and what is missing.',
    )
    .argument('<job>', 'a job that "export-job" or the pages wrote')
    .option('--limit <size>', 'largest hole that is allowed, as "0.5 mm" or "0.020 in" (default: as the job has it)')
    .option(...JSON_OPTION)
    .addHelpText('after', examples('vaporwright proof job-17.json', 'vaporwright proof job-17.json --limit "1 mm"'))
    .action(async (file: string, options) => (await import('./proof.ts')).proofCommand(file, options));

  program
    .command('simulate')
    .summary('play a scenario and write its traces')
    .description('Plays a scenario (car, fault, procedure) and writes the traces as CSV and SVG.')
    .argument('<scenario>', 'scenario file (JSON, format: vaporwright schema scenario)')
    .option('--out <name>', 'NAME.csv and NAME.svg are written; the scenario file’s name when absent')
    .option(...JSON_OPTION)
    .addHelpText(
      'after',
      examples(
        'vaporwright simulate examples/small-leak.scenario.json',
        'vaporwright simulate scenario.json --out trace',
      ),
    )
    .action(async (file: string, options) => (await import('./simulate.ts')).simulateCommand(file, options));

  program
    .command('schema')
    .summary('print the JSON Schema of a format')
    .description('Prints the JSON Schema of a format; without a name, the names.')
    .argument('[name]', 'name of the format')
    .addHelpText('after', examples('vaporwright schema', 'vaporwright schema car > car.schema.json'))
    .option(...JSON_OPTION)
    .action(async (name: string | undefined, options) => (await import('./schema.ts')).schemaCommand(name, options));

  program
    .command('bench')
    .summary('run a benchmark')
    .description(
      'Runs a benchmark in a clone of the project: accuracy, calibration, made, speed, csv, bus, readiness, planner, pages or server; all but accuracy without a name.',
    )
    .argument('[name]', 'accuracy, calibration, made, speed, csv, bus, readiness, planner, pages or server')
    .argument('[arguments...]', 'passed to the benchmark')
    .option(...JSON_OPTION)
    .allowUnknownOption()
    .passThroughOptions()
    .addHelpText(
      'after',
      examples(
        'vaporwright bench csv',
        'vaporwright bench accuracy FOLDER --answers answers.jsonl',
        'vaporwright bench --json csv',
      ),
    )
    .action(async (name: string | undefined, rest: string[], options) =>
      (await import('./bench.ts')).benchCommand(name, rest, options),
    );

  program
    .command('demo')
    .summary('the whole job on the invented example that ships')
    .description('Does the whole job on the invented example that ships: finding in words, report in a folder.')
    .option('--out <folder>', 'where the report goes', 'vaporwright-report')
    .option(...JSON_OPTION)
    .addHelpText('after', examples('vaporwright demo', 'vaporwright demo --out /tmp/look'))
    .action(async (options) => (await import('./demo.ts')).demoCommand(options));

  return program;
}
