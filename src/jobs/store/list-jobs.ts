import { type SqlBool, sql } from 'kysely';
import type { JobQuery } from '../job-store.ts';
import type { JobSummary } from '../record/job.ts';
import { searchWords } from './search-text.ts';
import type { StoreContext } from './store-context.ts';

const USUAL_LIMIT = 50;
const MOST = 200;

/** With a newer program, a job that was past its finding waits for one again. */
function waiting(program: string | undefined) {
  if (program === undefined) return sql<JobSummary['waitsFor']>`waits_for`;
  return sql<JobSummary['waitsFor']>`
    case when not closed and waits_for not in ('complaint', 'car', 'recording') and finding_program <> ${program}
    then 'finding' else waits_for end`;
}

/** Newest change first. Rows changed in the same instant come together, so that paging by moment leaves none out. */
export async function listJobs(context: StoreContext, query: JobQuery): Promise<readonly JobSummary[]> {
  const waits = waiting(context.program);
  let rows = context.sql
    .selectFrom('jobs')
    .select([
      'id',
      'number',
      'vehicle',
      'registration',
      'complaint',
      'codes',
      'finding_verdict',
      'finding_cause',
      'finding_probability',
      'changed_at',
      'demo',
      'closed',
      waits.as('waiting'),
    ])
    .orderBy('changed_at', 'desc')
    .fetch(Math.min(Math.max(query.limit ?? USUAL_LIMIT, 1), MOST), 'with ties');
  for (const word of searchWords(query.words ?? '')) rows = rows.where(sql<SqlBool>`strpos(search, ${word}) > 0`);
  if (query.waitsFor !== undefined) rows = rows.where(waits, '=', query.waitsFor);
  if (query.closed !== undefined) rows = rows.where('closed', '=', query.closed);
  if (query.before !== undefined) rows = rows.where('changed_at', '<', new Date(query.before));
  const found = await context.run(() => rows.execute());
  return found.map((row) => ({
    id: row.id,
    number: row.number,
    vehicle: row.vehicle,
    ...(row.registration === null ? {} : { registration: row.registration }),
    complaint: row.complaint,
    codes: row.codes,
    waitsFor: row.waiting,
    finding:
      row.finding_verdict === null || row.finding_cause === null || row.finding_probability === null
        ? null
        : ({
            verdict: row.finding_verdict,
            cause: row.finding_cause,
            probability: row.finding_probability,
          } as JobSummary['finding']),
    changedAt: row.changed_at.toISOString(),
    demo: row.demo,
    closed: row.closed,
  }));
}
