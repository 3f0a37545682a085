/** Settings of the shop, and long work that a page can come back to. */
export const settingsAndWork = `
create table settings (
  name text primary key,
  value json not null,
  changed_at timestamptz(3) not null,
  changed_by text not null
);

create table work (
  id uuid primary key,
  kind text not null,
  job_id uuid not null references jobs (id) on delete cascade,
  inputs_sha256 text not null,
  state text not null check (state in ('waiting', 'running', 'done', 'failed', 'cancelled')),
  fraction double precision not null,
  words text not null,
  error json,
  result json,
  started_at timestamptz(3) not null,
  -- Moves while the program that does it lives.
  beat_at timestamptz(3) not null,
  ended_at timestamptz(3)
);
-- The same work is not done twice at a time.
create unique index work_once on work (job_id, kind, inputs_sha256) where state in ('waiting', 'running');
create index work_open on work (beat_at) where state in ('waiting', 'running');
`;
