/** What the pages ask about recording live. */
import type { Job } from '../../jobs/record/job.ts';
import type {
  Cleared,
  LiveChange,
  LiveKeep,
  LiveKept,
  LiveOfJob,
  LiveStart,
  LiveStatus,
  Ports,
} from '../../server/contract/live.ts';
import { API } from '../../server/contract/paths.ts';
import { fetchJson } from './client.ts';

const live = (jobId: string): string => `/jobs/${encodeURIComponent(jobId)}/live`;
type OneLive = { readonly live: LiveStatus };

export const readPorts = (): Promise<Ports> => fetchJson('GET', '/live/ports');
export const readLive = (jobId: string): Promise<LiveOfJob> => fetchJson('GET', live(jobId));
export const startLive = (jobId: string, request: LiveStart): Promise<OneLive> =>
  fetchJson('POST', live(jobId), { json: request });
export const changeLive = (jobId: string, change: LiveChange): Promise<OneLive> =>
  fetchJson('PATCH', live(jobId), { json: change });
export const keepLive = (jobId: string, liveId: string, request: LiveKeep): Promise<LiveKept> =>
  fetchJson('POST', `${live(jobId)}/${encodeURIComponent(liveId)}/keep`, { json: request });
export const discardLive = (jobId: string, liveId: string): Promise<unknown> =>
  fetchJson('DELETE', `${live(jobId)}/${encodeURIComponent(liveId)}`);
export const takeLiveCodes = (jobId: string): Promise<Job> => fetchJson('POST', `${live(jobId)}/codes`);
export const clearLiveCodes = (jobId: string, language: 'en' | 'de'): Promise<Cleared> =>
  fetchJson('POST', `${live(jobId)}/codes/clear`, { json: { confirm: 'clear', language } });

/** Address of the stream; `after`: rows that are here already. */
export const liveEventsAddress = (jobId: string, after: number): string => `${API}${live(jobId)}/events?after=${after}`;
