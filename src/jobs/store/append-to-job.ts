/** Additions that lose nothing of others': recordings, attachments, findings, hand-overs. */
import type { Actor } from '../job-store.ts';
import type { Job, JobFinding, RecordingEntry } from '../record/job.ts';
import { changeJob } from './change-job.ts';
import { nameFiles } from './name-file.ts';
import type { Tx } from './queries.ts';
import type { StoreContext } from './store-context.ts';
import { writeSection } from './write-section.ts';

type Finding = Omit<JobFinding, 'outdated'>;
type HandOver = Job['handOvers'][number];
type Uploaded =
  | { readonly section: 'recordings'; readonly entry: RecordingEntry }
  | { readonly section: 'attachments'; readonly entry: Job['attachments'][number] };

export function addUploaded(context: StoreContext, id: string, actor: Actor, { section, entry }: Uploaded) {
  return changeJob(context, id, actor, undefined, async (tx, job) => {
    await nameFiles(context, tx, id, [entry]);
    const before = job[section];
    const after = [...before, entry];
    await writeSection(tx, id, section, after);
    return { job: { ...job, [section]: after }, what: 'uploaded', section, before, after };
  });
}

export async function insertFinding(tx: Tx, jobId: string, position: number, finding: Finding): Promise<void> {
  await tx
    .insertInto('findings')
    .values({
      id: finding.id,
      job_id: jobId,
      position,
      made_at: new Date(finding.madeAt),
      inputs_sha256: finding.inputsSha256,
      program: finding.sheet.program,
      sheet: JSON.stringify(finding.sheet),
    })
    .execute();
}

export function addFinding(context: StoreContext, id: string, actor: Actor, finding: Finding): Promise<Job> {
  return changeJob(context, id, actor, undefined, async (tx, job) => {
    await insertFinding(tx, id, job.findings.length, finding);
    const { verdict, causes } = finding.sheet.finding;
    return {
      job: { ...job, findings: [...job.findings, { ...finding, outdated: false }] },
      what: 'finding',
      section: 'findings',
      // The sheet itself is kept with the finding and never changes.
      after: {
        id: finding.id,
        inputsSha256: finding.inputsSha256,
        program: finding.sheet.program,
        verdict,
        cause: causes[0]?.id,
        probability: causes[0]?.probability,
      },
    };
  });
}

/** The row with its document named, so that no way in can leave the document outside backups. */
export async function insertHandOver(
  context: StoreContext,
  tx: Tx,
  jobId: string,
  position: number,
  handOver: HandOver,
): Promise<void> {
  const bytes = await context.files.size(handOver.pdfSha256);
  await nameFiles(context, tx, jobId, [{ sha256: handOver.pdfSha256, bytes }]);
  await tx
    .insertInto('hand_overs')
    .values({
      id: handOver.id,
      job_id: jobId,
      position,
      made_at: new Date(handOver.madeAt),
      made_by: handOver.by,
      pdf_sha256: handOver.pdfSha256,
      language: handOver.language,
    })
    .execute();
}

export function addHandOver(context: StoreContext, id: string, actor: Actor, handOver: HandOver): Promise<Job> {
  return changeJob(context, id, actor, undefined, async (tx, job) => {
    await insertHandOver(context, tx, id, job.handOvers.length, handOver);
    return {
      job: { ...job, handOvers: [...job.handOvers, handOver] },
      what: 'hand-over',
      section: 'handOvers',
      after: handOver,
    };
  });
}
