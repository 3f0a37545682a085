/** Reads a whole job in one statement, so that it is of one moment. */
import { sql } from 'kysely';
import { NoSuchJob } from '../job-store.ts';
import { EMPTY_SECTIONS, type Sections } from '../record/empty-job.ts';
import type { Job, JobFinding } from '../record/job.ts';
import { withOutdated } from './outdated.ts';
import type { Queries } from './queries.ts';
import type { SheetCache } from './sheet-cache.ts';

interface Row {
  readonly id: string;
  readonly number: number;
  readonly version: number;
  readonly created_at: Date;
  readonly changed_at: Date;
  readonly demo: boolean;
  readonly closed: boolean;
  readonly sections: Partial<Sections> | null;
  readonly findings: readonly { id: string; made_at: string; inputs_sha256: string }[] | null;
  readonly hand_overs: readonly HandOverRow[] | null;
}
interface HandOverRow {
  readonly id: string;
  readonly made_at: string;
  readonly made_by: string;
  readonly pdf_sha256: string;
  readonly language: Job['handOvers'][number]['language'];
}

const UUID = /^[0-9a-f]{8}-([0-9a-f]{4}-){3}[0-9a-f]{12}$/i;

/** @throws NoSuchJob */
export function checkJobId(id: string): void {
  if (!UUID.test(id)) throw new NoSuchJob(id);
}

/** @throws NoSuchJob */
export async function readJob(db: Queries, id: string, sheets: SheetCache, program: string | undefined): Promise<Job> {
  checkJobId(id);
  const { rows } = await sql<Row>`
    select j.id, j.number, j.version, j.created_at, j.changed_at, j.demo, j.closed,
      (select json_object_agg(s.section, s.value) from job_sections s where s.job_id = j.id) as sections,
      (select json_agg(f order by f.position) from
        (select id, position, made_at, inputs_sha256 from findings where job_id = j.id) f) as findings,
      (select json_agg(h order by h.position) from hand_overs h where h.job_id = j.id) as hand_overs
    from jobs j where j.id = ${id}`.execute(db);
  const row = rows[0];
  if (row === undefined) throw new NoSuchJob(id);

  const sections: Sections = { ...EMPTY_SECTIONS, ...row.sections };
  const found = row.findings ?? [];
  const read = await sheets.read(
    db,
    found.map((finding) => finding.id),
  );
  const findings = found.map((finding): JobFinding => {
    const sheet = read.get(finding.id);
    // Taken away together with its job since the first statement.
    if (sheet === undefined) throw new NoSuchJob(id);
    return {
      id: finding.id,
      madeAt: new Date(finding.made_at).toISOString(),
      inputsSha256: finding.inputs_sha256,
      outdated: false,
      sheet,
    };
  });
  const job: Job = {
    schema: 'vaporwright-job-1',
    id: row.id,
    number: row.number,
    version: row.version,
    createdAt: row.created_at.toISOString(),
    changedAt: row.changed_at.toISOString(),
    demo: row.demo,
    closed: row.closed,
    ...sections,
    findings,
    handOvers: (row.hand_overs ?? []).map((handOver) => ({
      id: handOver.id,
      madeAt: new Date(handOver.made_at).toISOString(),
      by: handOver.made_by,
      pdfSha256: handOver.pdf_sha256,
      language: handOver.language,
    })),
  };
  return withOutdated(job, program);
}
