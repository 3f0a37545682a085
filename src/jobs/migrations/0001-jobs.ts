/** Jobs with their sections, findings, hand-overs, history and the raw files they name. */
export const jobs = `
create table counters (
  name text primary key,
  value integer not null
);
insert into counters (name, value) values ('job', 0);

create table jobs (
  id uuid primary key,
  number integer not null unique,
  version integer not null,
  created_at timestamptz(3) not null,
  changed_at timestamptz(3) not null,
  demo boolean not null,
  closed boolean not null,
  -- What the list shows; written with every change, so that the list reads one table.
  vehicle text not null,
  registration text,
  complaint text not null,
  codes text[] not null,
  search text not null,
  waits_for text not null,
  finding_verdict text,
  finding_cause text,
  finding_probability double precision,
  finding_program text
);
create index jobs_changed_at on jobs (changed_at desc, id);
create index jobs_demo on jobs (id) where demo;

-- json, not jsonb: the text is kept as it came, with every number and escape.
create table job_sections (
  job_id uuid not null references jobs (id) on delete cascade,
  section text not null,
  value json not null,
  primary key (job_id, section)
);

create table findings (
  id uuid primary key,
  job_id uuid not null references jobs (id) on delete cascade,
  position integer not null,
  made_at timestamptz(3) not null,
  inputs_sha256 text not null,
  program text not null,
  sheet json not null,
  unique (job_id, position)
);

create table hand_overs (
  id uuid primary key,
  job_id uuid not null references jobs (id) on delete cascade,
  position integer not null,
  made_at timestamptz(3) not null,
  made_by text not null,
  pdf_sha256 text not null,
  language text not null,
  unique (job_id, position)
);

create table history (
  job_id uuid not null references jobs (id) on delete cascade,
  version integer not null,
  at timestamptz(3) not null,
  made_by text not null,
  user_id uuid,
  what text not null,
  section text,
  before json,
  after json,
  -- The version whose change this entry takes back.
  undoes integer,
  primary key (job_id, version)
);

-- Raw files on the disk, by hash. A row is written after the file has been flushed.
create table files (
  sha256 text primary key check (sha256 ~ '^[0-9a-f]{64}$'),
  bytes bigint not null,
  kept_at timestamptz(3) not null
);

create table job_files (
  job_id uuid not null references jobs (id) on delete cascade,
  sha256 text not null references files (sha256),
  primary key (job_id, sha256)
);
create index job_files_sha256 on job_files (sha256);
`;
