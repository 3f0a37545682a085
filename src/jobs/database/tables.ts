/** Rows as typed queries see them; the tables themselves are in `migrations/`. */
import type { ColumnType, Generated } from 'kysely';

type Moment = ColumnType<Date, Date, Date>;
/** Read parsed, written as text. */
type Json = ColumnType<unknown, string, string>;
type MaybeJson = ColumnType<unknown, string | null, string | null>;

export interface Tables {
  counters: { name: string; value: number };
  jobs: {
    id: string;
    number: number;
    version: number;
    created_at: Moment;
    changed_at: Moment;
    demo: boolean;
    closed: boolean;
    vehicle: string;
    registration: string | null;
    complaint: string;
    codes: string[];
    search: string;
    waits_for: string;
    finding_verdict: string | null;
    finding_cause: string | null;
    finding_probability: number | null;
    finding_program: string | null;
  };
  job_sections: { job_id: string; section: string; value: Json };
  findings: {
    id: string;
    job_id: string;
    position: number;
    made_at: Moment;
    inputs_sha256: string;
    program: string;
    sheet: Json;
  };
  hand_overs: {
    id: string;
    job_id: string;
    position: number;
    made_at: Moment;
    made_by: string;
    pdf_sha256: string;
    language: string;
  };
  history: {
    job_id: string;
    version: number;
    at: Moment;
    made_by: string;
    user_id: string | null;
    what: string;
    section: string | null;
    before: MaybeJson;
    after: MaybeJson;
    undoes: number | null;
  };
  files: { sha256: string; bytes: number; kept_at: Moment };
  job_files: { job_id: string; sha256: string };
  users: {
    id: string;
    name: string;
    name_key: string;
    role: string;
    password_hash: string;
    created_at: Moment;
    disabled_at: Moment | null;
  };
  sessions: { token_sha256: string; user_id: string; created_at: Moment; seen_at: Moment; expires_at: Moment };
  shares: {
    id: string;
    job_id: string;
    token_sha256: string;
    label: string;
    made_by: string;
    created_at: Moment;
    expires_at: Moment | null;
    revoked_at: Moment | null;
    revoked_by: string | null;
  };
  security_log: {
    id: Generated<number>;
    at: Moment;
    kind: string;
    actor: string | null;
    address: string | null;
    detail: MaybeJson;
  };
  open_work: {
    id: string;
    job_id: string;
    kind: string;
    taken: string | null;
    started_at: Moment;
    program: number;
  };
  settings: { name: string; value: Json; changed_at: Moment; changed_by: string };
}
