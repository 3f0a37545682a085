/** The one page for the customer. */
import { carName, type Desk, day } from './desk.ts';
import { type Block, listed, type Part, type Section, text } from './document.ts';
import { notVerified } from './not-verified.ts';
import { limitSentences, plainSentence, provenSentences, sentenceOf, sizeSentence } from './outcome.ts';

/** How much is said, so that one page holds it: what is cut stands whole in the evidence. */
export interface Room {
  readonly complaintLetters: number;
  readonly repairs: number;
  readonly parts: number;
  /** Entries of the list of what is not verified. */
  readonly open: number;
  /** Of one text that somebody typed. */
  readonly letters: number;
  /** Of a line of the head: shop, address, car. */
  readonly headLetters: number;
  /** What somebody typed beside the proof; else it stands in the evidence only. */
  readonly proofWords: boolean;
  /** Sentences of the proof after its verdict. */
  readonly proofFigures: number;
  /** Points above and below the rule between sections. */
  readonly gap: number;
}

/** From roomy to tight. The tightest holds the longest texts of the job record (a test sees to it). */
export const ROOMS: readonly Room[] = [
  {
    complaintLetters: 700,
    repairs: 4,
    parts: 8,
    open: 8,
    letters: 400,
    headLetters: 400,
    proofWords: true,
    proofFigures: 7,
    gap: 6,
  },
  {
    complaintLetters: 500,
    repairs: 3,
    parts: 5,
    open: 6,
    letters: 240,
    headLetters: 200,
    proofWords: true,
    proofFigures: 6,
    gap: 6,
  },
  {
    complaintLetters: 350,
    repairs: 2,
    parts: 4,
    open: 5,
    letters: 160,
    headLetters: 100,
    proofWords: true,
    proofFigures: 5,
    gap: 5,
  },
  {
    complaintLetters: 200,
    repairs: 1,
    parts: 2,
    open: 4,
    letters: 110,
    headLetters: 80,
    proofWords: true,
    proofFigures: 4,
    gap: 4,
  },
  {
    complaintLetters: 160,
    repairs: 1,
    parts: 1,
    open: 3,
    letters: 80,
    headLetters: 70,
    proofWords: false,
    proofFigures: 1,
    gap: 3,
  },
];

/** Cut at a word's end, with a mark that something follows. */
export function shortened(words: string, letters: number): string {
  // A no-break space stays: it keeps a number with its unit.
  const line = words.replace(/[^\S\u00a0]+/g, ' ').trim();
  if (line.length <= letters) return line;
  const cut = line.slice(0, letters);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), letters * 0.6)).trimEnd()} …`;
}

const sentencesOf = (parts: readonly string[]): string => parts.map(sentenceOf).join(' ');

function complaint({ given, words }: Desk, room: Room): readonly Block[] {
  const said = shortened(given.complaint.words, room.complaintLetters);
  // A code may be stored and permanent: to its owner it is one.
  const names = [...new Set(given.codes.before.map(({ code }) => code))];
  const codes = names.map((code) => `${code}: ${words.codeMeanings[code] ?? words.otherCode}`);
  return [
    said === '' ? text('body', words.noComplaint) : text('quote', said),
    ...(codes.length === 0 ? [] : [text('quiet', shortened(codes.join('; '), room.letters))]),
  ];
}

function found(desk: Desk): readonly Block[] {
  const newest = desk.given.findings.before ?? desk.given.findings.after;
  if (newest === null) return [text('lead', desk.words.noFindingYet)];
  const { finding } = newest;
  const first = finding.causes[0];
  const size = sizeSentence(desk, finding);
  const sure =
    finding.verdict === 'fault' && first !== undefined
      ? desk.words.howSure(desk.q.percent(first.probability), desk.words.certainty(first.probability))
      : '';
  return [
    text('lead', plainSentence(desk, finding)),
    text('body', [size ?? '', sure].filter((part) => part !== '').join(' ')),
    ...(size === null ? [] : [text('body', sentencesOf(limitSentences(desk, finding)))]),
  ];
}

function done({ given, words }: Desk, room: Room): readonly Block[] {
  const checks = given.checks.length === 0 ? [] : [text('body', words.checksDone(given.checks.length))];
  if (given.repairs.length === 0) return [text('body', words.nothingDone), ...checks];
  const items = given.repairs.slice(0, room.repairs).map((repair) => {
    const names = repair.parts.slice(0, room.parts).map(({ name }) => shortened(name, Math.min(60, room.letters / 2)));
    const parts =
      names.length === 0 ? '' : ` ${words.repairParts(names.join(', '), repair.parts.length - names.length)}`;
    return `${words.repairDone(words.day(day(repair.at)), shortened(repair.what, room.letters))}${parts}`;
  });
  const isCut =
    given.repairs.length > room.repairs ||
    given.repairs.some(({ parts, what }) => parts.length > room.parts || what.length > room.letters);
  return [...listed(items), ...checks, ...(isCut ? [text('quiet', words.inEvidence)] : [])];
}

function proven(desk: Desk, room: Room): readonly Block[] {
  const [first, ...rest] = provenSentences(desk);
  const own = room.proofWords ? shortened(desk.given.proof?.words ?? '', room.letters) : '';
  return [
    ...(first === undefined ? [] : [text('strong', first)]),
    ...(rest.length === 0 ? [] : [text('body', sentencesOf(rest.slice(0, room.proofFigures)))]),
    ...(own === '' ? [] : [text('body', own)]),
  ];
}

/** No sentence of the catalogue that is listed as open is longer, but for long lists of places. */
const OWN_SENTENCE = 190;

function open(desk: Desk, room: Room): readonly Block[] {
  const typed = desk.given.proof?.missing.trim() ?? '';
  const items = notVerified(desk).map((item) => shortened(item, item === typed ? room.letters : OWN_SENTENCE));
  const isCut = items.length > room.open;
  return [...listed(items.slice(0, room.open)), ...(isCut ? [text('quiet', desk.words.inEvidence)] : [])];
}

function lamp({ given, words }: Desk): readonly Block[] {
  const hasPermanent = [...given.codes.before, ...(given.codes.after ?? [])].some(
    ({ status }) => status === 'permanent',
  );
  const monitor = given.car === null ? words.monitorUnknownLayout : words.monitor[given.car.layout];
  return listed([...words.lamp, monitor, words.howToHelp, ...(hasPermanent ? [words.permanentCodes] : [])]);
}

export function customerPart(desk: Desk, room: Room): Part {
  const { given, words } = desk;
  const { sections } = words;
  const all: Section[] = [
    { title: sections.complaint, blocks: complaint(desk, room) },
    { title: sections.found, blocks: found(desk) },
    { title: sections.done, blocks: done(desk, room) },
    { title: sections.proven, blocks: proven(desk, room) },
    { title: sections.notVerified, blocks: open(desk, room) },
    { title: sections.lamp, blocks: lamp(desk) },
    {
      title: sections.before,
      blocks: [
        { kind: 'caution', lead: words.ownerCautions.join(' '), items: [] },
        text('quiet', `${words.cautionLead} ${words.diameterConvention}`),
      ],
    },
  ];
  return {
    id: 'customer',
    gap: room.gap,
    title: words.customerTitle,
    subtitle: words.customerSubtitle(shortened(carName(desk), room.headLetters), words.day(day(given.madeAt))),
    sections: all,
  };
}
