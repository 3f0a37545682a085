/**
 * How soon the planner answers and how near the optimum it knows itself to be, in processor time, for every complaint
 * without a finding (the hardest: all causes open) and for findings that leave a few causes open.
 *
 *   node --import tsx bench/planner/speed.ts
 */
import type { FoundCauses, JobState } from '../../src/checks/job-state.ts';
import { NEW_JOB } from '../../src/checks/job-state.ts';
import { planNext } from '../../src/checks/plan.ts';
import { COMPLAINTS } from '../../src/diagnosis/priors/root-causes.ts';

const LIMIT_MS = 2000;
const cpuMs = (since: NodeJS.CpuUsage): number => process.cpuUsage(since).user / 1e3;
/** Asking for the time takes a tenth of a point's time: it is asked for every so many points. */
const ASKED_EVERY = 10;

const found = (
  ...causes: readonly (readonly [FoundCauses['causes'][number]['id'], number, ...string[]])[]
): FoundCauses => ({
  causes: causes.map(([id, probability, ...group]) => ({
    id,
    probability,
    places:
      group.length > 0
        ? [{ group: group as FoundCauses['causes'][number]['places'][number]['group'], probability }]
        : [],
  })),
});

const CASES: readonly { readonly name: string; readonly job: JobState }[] = [
  ...COMPLAINTS.map((complaint) => ({ name: complaint, job: { ...NEW_JOB, complaints: [complaint] } })),
  {
    name: 'finding: leak, tank side',
    job: {
      ...NEW_JOB,
      codes: ['P0442'],
      finding: found(['leak', 0.93, 'cap and neck', 'tank top', 'vapour line'], ['vent_leak', 0.05], ['none', 0.02]),
    },
  },
  {
    name: 'finding: leak or vent valve',
    job: {
      ...NEW_JOB,
      codes: ['P0456'],
      finding: found(['leak', 0.5, 'canister', 'vent side', 'purge line'], ['vent_leak', 0.45], ['none', 0.05]),
    },
  },
  {
    name: 'finding: purge seeps',
    job: {
      ...NEW_JOB,
      codes: ['P0442'],
      finding: found(['purge_leak', 0.9], ['leak', 0.08, 'purge line'], ['none', 0.02]),
    },
  },
  {
    name: 'finding: vent restricted',
    job: {
      ...NEW_JOB,
      codes: ['P0446'],
      finding: found(['vent_restricted', 0.85, 'vent side'], ['path_blocked', 0.1], ['none', 0.05]),
    },
  },
];

const rows = CASES.map(({ name, job }) => {
  const since = process.cpuUsage();
  let asked = 0;
  const shouldStop = () => ++asked % ASKED_EVERY === 0 && cpuMs(since) > LIMIT_MS;
  const answers = planNext(job, { expansions: 1e9, gap: 0.01, shouldStop });
  const first = answers.next();
  const firstMs = cpuMs(since);
  let last = first;
  while (!last.done) last = answers.next();
  const { gap, next, expansions, expected } = last.value;
  return { name, firstMs, first: first.value.next.id, last: next.id, gap, expansions, minutes: expected.minutes };
});
console.log(
  `${'case'.padEnd(30)}${['first ms', 'first', 'at 2 s', 'gap %', 'points', 'minutes'].map((h) => h.padStart(14)).join('')}`,
);
for (const r of rows) {
  const cells = [
    r.firstMs.toFixed(0),
    r.first,
    r.last,
    (100 * r.gap).toFixed(1),
    String(r.expansions),
    r.minutes.toFixed(0),
  ];
  console.log(`${r.name.padEnd(30)}${cells.map((c) => c.padStart(14)).join('')}`);
}
console.log(JSON.stringify({ bench: 'planner speed', limitMs: LIMIT_MS, rows }));
