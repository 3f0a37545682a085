/**
 * Long work that has begun and not ended, by the program that does it (`database/presence.ts`). Before, one list of the settings
 * held it for all programs; what that list holds was left by a program that is gone, and 0 is nobody's number.
 */
export const openWork = `
create table open_work (
  id uuid primary key,
  job_id uuid not null references jobs (id) on delete cascade,
  kind text not null,
  taken text,
  started_at timestamptz(3) not null,
  program integer not null
);
create index open_work_job on open_work (job_id);

insert into open_work (id, job_id, kind, taken, started_at, program)
select (mark ->> 'id')::uuid, (mark ->> 'jobId')::uuid, mark ->> 'kind', mark ->> 'taken', (mark ->> 'startedAt')::timestamptz, 0
from settings, json_array_elements(value) as mark
where name = 'open work' and exists (select from jobs where jobs.id = (mark ->> 'jobId')::uuid)
on conflict do nothing;
delete from settings where name = 'open work';
`;
