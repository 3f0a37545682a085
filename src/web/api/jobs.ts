/** What the pages ask about jobs. */
import type { HistoryEntry, Job, JobSummary, Section, SectionName } from '../../jobs/record/job.ts';
import type { InspectionRule } from '../../readiness/inspection.ts';
import type { Share } from '../../server/contract/accounts.ts';
import type { HandOverRequest } from '../../server/contract/hand-over.ts';
import type { ListQuery, NewJobRequest } from '../../server/contract/jobs.ts';
import { API } from '../../server/contract/paths.ts';
import type { Preview, Uploaded } from '../../server/contract/recordings.ts';
import type { Work } from '../../server/contract/work.ts';
import { fetchAnswer, fetchJson } from './client.ts';

const inPath = encodeURIComponent;
const job = (id: string): string => `/jobs/${inPath(id)}`;

export async function listJobs(query: ListQuery, signal?: AbortSignal): Promise<readonly JobSummary[]> {
  const words = new URLSearchParams(
    Object.entries(query).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])),
  );
  const { jobs } = await fetchJson<{ jobs: JobSummary[] }>('GET', words.size > 0 ? `/jobs?${words}` : '/jobs', {
    ...(signal === undefined ? {} : { signal }),
  });
  return jobs;
}

export const createJob = (request: NewJobRequest): Promise<Job> => fetchJson('POST', '/jobs', { json: request });
export const readJob = (id: string): Promise<Job> => fetchJson('GET', job(id));

export const changeSection = <Name extends SectionName>(
  id: string,
  version: number,
  section: Name,
  value: Section<Name>,
  keepalive = false,
): Promise<Job> => fetchJson('PATCH', job(id), { json: { version, change: { section, value } }, keepalive });

export const undoChange = (id: string, version: number): Promise<Job> =>
  fetchJson('POST', `${job(id)}/undo`, { json: { version } });
export const setClosed = (id: string, version: number, closed: boolean): Promise<Job> =>
  fetchJson('POST', `${job(id)}/closed`, { json: { version, closed } });

export const readHistory = async (id: string): Promise<readonly HistoryEntry[]> =>
  (await fetchJson<{ history: HistoryEntry[] }>('GET', `${job(id)}/history`)).history;

/** Fields stand before the file, so that the server knows them when the bytes begin to come. */
function formWith(file: File, fields: Readonly<Record<string, string | undefined>> = {}): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) if (value !== undefined) form.append(name, value);
  form.append('file', file);
  return form;
}

export const uploadRecording = (
  id: string,
  file: File,
  fields: {
    readonly taken?: 'before-repair' | 'after-repair';
    readonly label?: string;
    readonly mapping?: string;
  } = {},
): Promise<Uploaded> => fetchJson('POST', `${job(id)}/recordings`, { form: formWith(file, { ...fields }) });
export const uploadAttachment = (id: string, file: File, caption = ''): Promise<Job> =>
  fetchJson('POST', `${job(id)}/attachments`, { form: formWith(file, { caption }) });
export const importJob = (file: File): Promise<Job> => fetchJson('POST', '/jobs/import', { form: formWith(file) });

export const readPreview = (id: string, recordingId: string): Promise<Preview> =>
  fetchJson('GET', `${job(id)}/recordings/${inPath(recordingId)}/preview`);
/** Bytes for `decodeSamples` of the contract. */
export const readSamples = async (id: string, recordingId: string, signal?: AbortSignal): Promise<ArrayBuffer> =>
  (
    await fetchAnswer('GET', `${job(id)}/recordings/${inPath(recordingId)}/samples`, {
      ...(signal === undefined ? {} : { signal }),
    })
  ).arrayBuffer();

/** `taken`: from the recordings before or after the repair alone. */
export const startFinding = async (id: string, taken?: 'before-repair' | 'after-repair'): Promise<Work> =>
  (await fetchJson<{ work: Work }>('POST', `${job(id)}/findings`, taken === undefined ? {} : { json: { taken } })).work;
export const startHandOver = async (id: string, request: HandOverRequest): Promise<Work> =>
  (await fetchJson<{ work: Work }>('POST', `${job(id)}/hand-overs`, { json: request })).work;
export const cancelWork = (workId: string): Promise<unknown> => fetchJson('DELETE', `/work/${inPath(workId)}`);
export const readWork = async (id: string): Promise<readonly Work[]> =>
  (await fetchJson<{ work: Work[] }>('GET', `${job(id)}/work`)).work;

/** One work by its id; also one that is over, for some minutes. */
export const readOneWork = async (workId: string): Promise<Work> =>
  (await fetchJson<{ work: Work }>('GET', `/work/${inPath(workId)}`)).work;

export const createShare = (id: string, label: string): Promise<{ share: Share; url: string }> =>
  fetchJson('POST', `${job(id)}/shares`, { json: { label } });
export const readShares = async (id: string): Promise<readonly Share[]> =>
  (await fetchJson<{ shares: Share[] }>('GET', `${job(id)}/shares`)).shares;
export const revokeShare = (id: string, shareId: string): Promise<unknown> =>
  fetchJson('DELETE', `${job(id)}/shares/${inPath(shareId)}`);
export const readSharedSamples = async (token: string, recordingId: string): Promise<ArrayBuffer> =>
  (await fetchAnswer('GET', `/shared/${inPath(token)}/recordings/${inPath(recordingId)}/samples`)).arrayBuffer();
export const readSharedPreview = (token: string, recordingId: string): Promise<Preview> =>
  fetchJson('GET', `/shared/${inPath(token)}/recordings/${inPath(recordingId)}/preview`);
/** The one rule that the job is held against. */
export const readSharedRule = (token: string): Promise<InspectionRule> =>
  fetchJson('GET', `/shared/${inPath(token)}/inspection-rule`);
export const readShared = (token: string): Promise<Job> => fetchJson('GET', `/shared/${inPath(token)}`);

export const removeDemo = (): Promise<{ removed: number }> => fetchJson('DELETE', '/demo');

/** Addresses that the browser itself opens. */
export const rawAddress = (id: string, recordingId: string): string =>
  `${API}${job(id)}/recordings/${inPath(recordingId)}/raw`;
export const attachmentAddress = (id: string, attachmentId: string): string =>
  `${API}${job(id)}/attachments/${inPath(attachmentId)}`;
export const exportAddress = (id: string): string => `${API}${job(id)}/export`;
export const pdfAddress = (id: string, handOverId: string): string =>
  `${API}${job(id)}/hand-overs/${inPath(handOverId)}/pdf`;
export const handOverPageAddress = (id: string, query: Readonly<Record<string, string>>): string =>
  `${API}${job(id)}/hand-over.html?${new URLSearchParams(query)}`;
export const eventsAddress = (id: string): string => `${API}${job(id)}/events`;

const shared = (token: string): string => `${API}/shared/${inPath(token)}`;
export const sharedPdfAddress = (token: string, handOverId: string): string =>
  `${shared(token)}/hand-overs/${inPath(handOverId)}/pdf`;
export const sharedFileAddress = (token: string, attachmentId: string): string =>
  `${shared(token)}/attachments/${inPath(attachmentId)}`;
