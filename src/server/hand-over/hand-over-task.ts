/** What a worker thread is given to make a hand-over document. */
import type { HandOverSettings } from '../../jobs/hand-over/hand-over-of.ts';
import type { Job } from '../../jobs/record/job.ts';
import type { ReadingInputs } from '../recordings/parsed.ts';
import type { PictureFile } from './pictures.ts';

export interface HandOverInputs {
  readonly job: Job;
  readonly settings: HandOverSettings;
  /** Recordings that no finding tells of, by the id of their entry. */
  readonly readings: readonly { readonly id: string; readonly reading: ReadingInputs }[];
  /** Photos of the job, where their files lie. */
  readonly pictures: readonly PictureFile[];
}
