/**
 * Every word that the pages show, in English. Other languages have the same shape: a missing key fails the types.
 * Parts of a page that are large have files of their own beside this one.
 */
import { CHECKS_PAGE_EN } from './checks.en.ts';
import { DRAWING_EN } from './drawing.en.ts';
import { FINDING_EN } from './finding.en.ts';
import { JOB_EN } from './job.en.ts';
import { LIVE_EN } from './live.en.ts';
import { MONITOR_EN } from './monitor.en.ts';
import { RECORDING_EN } from './recording.en.ts';
import { SHOP_EN } from './shop.en.ts';
import { TRADE_EN } from './trade.en.ts';

export const EN = {
  common: {
    under: 'under',
    over: 'over',
    to: 'to',
    and: 'and',
    notKnown: 'not known',
    cancel: 'Cancel',
    close: 'Close',
    save: 'Save',
    add: 'Add',
    remove: 'Remove',
    change: 'Change',
    done: 'Done',
    tryAgain: 'Try again',
    loading: 'Loading …',
    fromMemory: 'from memory',
    interval90: '90 % interval',
    optional: 'if known',
    caution: 'Caution',
    download: 'Download',
  },
  app: {
    name: 'Vaporwright',
    skip: 'Skip to the sheet',
    navigation: 'Pages',
    jobs: 'Jobs',
    system: 'System',
    settings: 'Settings',
    display: 'Units and display',
    signIn: 'Sign in',
    signOut: 'Sign out',
    signedInAs: (name: string) => `Signed in as ${name}`,
    unknownPage: 'There is nothing at this address',
    unknownPageWords: 'The link may be old, or a letter may be missing.',
    toJobs: 'To the list of jobs',
    pageFailed: 'This page could not be drawn',
    pageFailedWords:
      'What you entered is kept on the server. Load the page anew; if it fails again, keep the words below.',
    reload: 'Load anew',
  },
  display: {
    title: 'Units and display',
    words: 'Holds on this device, on every page at once.',
    pressure: 'Pressure',
    length: 'Hole diameter',
    temperature: 'Temperature',
    volume: 'Volume',
    language: 'Language',
    theme: 'Appearance',
    themes: { system: 'as the system', light: 'light', dark: 'dark' },
  },
  connection: {
    away: 'No connection to the server.',
    awayWords:
      'What was opened before can be read. What you change is kept on this device and sent when the server is back.',
    awayShort: 'Reading works; making something new needs the server.',
    back: 'The server is back.',
    cannotReach:
      'The server cannot be reached. Is the program running? Changes need it; jobs that were opened before can be read.',
    notKept: 'This was not opened on this device before, so it can only be read with the server.',
  },
  errors: {
    title: 'That did not work',
    where: (file: string, line: number | undefined, column: number | undefined) =>
      [file, line === undefined ? '' : `line ${line}`, column === undefined ? '' : `column ${column}`]
        .filter((part) => part !== '')
        .join(', '),
    found: (what: string) => `Found: ${what}`,
    expected: (what: string) => `Expected: ${what}`,
    signIn: 'Please sign in.',
    codes: {
      'bad-request': 'The server could not take this as it was sent.',
      'sign-in': 'Sign in to go on.',
      'wrong-password': 'Name or password is wrong.',
      'not-allowed': 'Your role does not allow this.',
      'wrong-origin': 'The request came from an address that this server does not answer to.',
      'stale-page': 'This page is out of date. Load it anew.',
      'not-found': 'It is not there, or no longer.',
      'changed-meanwhile': 'Somebody else changed this job meanwhile.',
      'not-possible': 'Not possible yet.',
      'too-large': 'The file is too large.',
      'not-a-recording': 'This is not a recording: a CSV file, or one packed with gzip, is needed.',
      unreadable: 'The file cannot be read.',
      'too-many': 'Too many attempts. Wait a little.',
      internal: 'The server failed at this. Nothing was changed.',
      'no-room': 'The disk of the server is full. Nothing was changed.',
      'store-away': 'The store of jobs does not answer. Nothing was changed.',
    },
  },
  jobs: {
    title: 'Jobs',
    count: (count: number) => (count === 1 ? '1 job' : `${count} jobs`),
    search: 'Search',
    searchHint: 'number, car, registration, words, code',
    waitsFor: 'Waits for',
    any: 'anything',
    closed: 'Show closed jobs',
    newJob: 'New job',
    importJob: 'Import a job file',
    backup: 'Make a backup',
    drop: 'Drop a recording anywhere here to start a job with it.',
    chooseRecording: 'Start with a recording',
    empty: 'No jobs yet',
    emptyWords: 'Begin with the complaint, or with a recording: the car and the rest can follow.',
    none: 'No job fits this search.',
    more: 'Show more',
    demo: 'demo',
    demoWords: (count: number) =>
      count === 1 ? 'One of these is an invented demo job.' : `${count} of these are invented demo jobs.`,
    removeDemo: 'Remove the demo',
    demoRemoved: (count: number) => (count === 1 ? 'One demo job was removed.' : `${count} demo jobs were removed.`),
    number: (number: number) => `Job ${number}`,
    columns: {
      job: 'Job',
      car: 'Car',
      complaint: 'Complaint',
      finding: 'Finding',
      waitsFor: 'Waits for',
      changed: 'Changed',
    },
    noFinding: 'none yet',
    isClosed: 'closed',
    noCar: 'car not named',
    dialog: {
      title: 'New job',
      words: 'Everything can be filled in later. Enter saves.',
      car: 'What you call the car',
      carHint: 'for example: grey estate, bay 2',
      registration: 'Registration',
      complaint: 'In the customer’s words',
      codes: 'Codes',
      codesHint: 'with spaces between: P0456 P0442',
      kinds: 'Kind of complaint',
      create: 'Open the job',
    },
    backupMade: 'The backup was handed to the browser’s downloads.',
  },
  causes: TRADE_EN.causes,
  trade: TRADE_EN,
  job: JOB_EN,
  shop: SHOP_EN,
  recording: RECORDING_EN,
  monitor: MONITOR_EN,
  live: LIVE_EN,
  finding: FINDING_EN,
  checks: CHECKS_PAGE_EN,
  drawing: DRAWING_EN,
};
/** What a catalogue holds. */
export type Text = typeof EN;
