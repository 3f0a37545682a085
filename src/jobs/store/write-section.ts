import type { SectionName } from '../record/job.ts';
import type { Tx } from './queries.ts';

export async function writeSection(tx: Tx, jobId: string, section: SectionName, value: unknown): Promise<void> {
  await tx
    .insertInto('job_sections')
    .values({ job_id: jobId, section, value: JSON.stringify(value) })
    .onConflict((conflict) =>
      conflict.columns(['job_id', 'section']).doUpdateSet((eb) => ({ value: eb.ref('excluded.value') })),
    )
    .execute();
}
