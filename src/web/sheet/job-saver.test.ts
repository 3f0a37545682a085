import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Job, SectionName } from '../../jobs/record/job.ts';
import { Conflict, Unreachable } from '../api/client.ts';
import { type Drafts, JobSaver } from './job-saver.ts';
import { SECTION_NAMES } from './sections.ts';

const FIRST = {
  id: 'a',
  version: 3,
  complaint: { words: 'old', types: [] },
  notes: [],
  codes: [],
  checks: [],
} as unknown as Job;

/** A store of one job, as the server keeps it: refuses what was made on another version. */
class Store {
  job: Job = FIRST;
  isAway = false;
  refuses: unknown = null;
  readonly writes: string[] = [];
  kept: Drafts = {};
  readonly told: SectionName[][] = [];
  /** Runs between the request and its answer. */
  meanwhile: (() => void) | null = null;

  write(section: SectionName, value: unknown): Job {
    this.job = { ...this.job, version: this.job.version + 1, [section]: value } as Job;
    return this.job;
  }

  saver(kept: Drafts = {}): JobSaver {
    return new JobSaver(this.job, kept, SECTION_NAMES, {
      change: async (job, section, value) => {
        if (this.isAway) throw new Unreachable();
        if (this.refuses !== null) throw this.refuses;
        if (job.version !== this.job.version) throw new Conflict({ code: 'changed-meanwhile', message: '' }, this.job);
        this.writes.push(`${section} on ${job.version}`);
        const answer = this.write(section, value);
        this.meanwhile?.();
        return answer;
      },
      read: async () => {
        if (this.isAway) throw new Unreachable();
        return this.job;
      },
      keepDrafts: (_, drafts) => {
        this.kept = drafts;
      },
      tellElsewhere: (sections) => this.told.push([...sections]),
    });
  }
}

const words = (text: string) => ({ words: text, types: [] });
let store: Store;
beforeEach(() => {
  vi.useFakeTimers();
  store = new Store();
});
afterEach(() => {
  vi.useRealTimers();
});
const pass = (ms = 5000): Promise<unknown> => vi.advanceTimersByTimeAsync(ms);

describe('saving as it is written', () => {
  test('several quick changes are one write, shown at once', async () => {
    const saver = store.saver();
    for (const text of ['n', 'ne', 'new']) saver.save('complaint', words(text));
    expect(saver.getView()).toMatchObject({ state: 'unsaved', job: { complaint: { words: 'new' } } });
    await pass();
    expect(store.writes).toEqual(['complaint on 3']);
    expect(store.job.complaint.words).toBe('new');
    expect(saver.getView()).toMatchObject({ state: 'saved', job: { version: 4 } });
    expect(store.kept).toEqual({});
  });

  test('what is typed while a write is under way is saved after it', async () => {
    const saver = store.saver();
    saver.save('complaint', words('new'));
    store.meanwhile = () => {
      store.meanwhile = null;
      saver.save('complaint', words('newer'));
    };
    await pass();
    expect(store.job.complaint.words).toBe('newer');
    expect(store.writes).toEqual(['complaint on 3', 'complaint on 4']);
    expect(saver.getView().conflict).toBeNull();
  });

  test('writing back what stood there sends nothing once it is the same again', async () => {
    const saver = store.saver();
    saver.save('complaint', words('new'));
    await pass();
    saver.save('complaint', words('new'));
    await pass();
    expect(saver.getView().state).toBe('saved');
    expect(store.job.complaint.words).toBe('new');
  });
});

describe('two windows', () => {
  test('another section was changed: both stand, and it is told', async () => {
    const saver = store.saver();
    saver.save('complaint', words('mine'));
    store.write('codes', [{ code: 'P0442', status: 'stored' }]);
    await pass();
    expect(store.job).toMatchObject({ complaint: { words: 'mine' }, codes: [{ code: 'P0442' }] });
    expect(store.told).toEqual([['codes']]);
    expect(saver.getView().conflict).toBeNull();
  });

  test('the same section was changed: nothing is overwritten until the person chooses', async () => {
    const saver = store.saver();
    saver.save('complaint', words('mine'));
    store.write('complaint', words('theirs'));
    await pass();
    expect(store.job.complaint.words).toBe('theirs');
    expect(saver.getView().conflict).toEqual({
      section: 'complaint',
      mine: words('mine'),
      theirs: words('theirs'),
    });
    // Other sections are still saved meanwhile.
    saver.save('notes', [{ id: 'n', at: '', by: '', text: 'x' }]);
    await pass();
    expect(store.job.notes).toHaveLength(1);
    saver.choose('mine');
    await pass();
    expect(store.job.complaint.words).toBe('mine');
    expect(saver.getView()).toMatchObject({ state: 'saved', conflict: null });
  });

  test('taking the other gives up the draft', async () => {
    const saver = store.saver();
    saver.save('complaint', words('mine'));
    store.write('complaint', words('theirs'));
    await pass();
    saver.choose('theirs');
    await pass();
    expect(saver.getView()).toMatchObject({ state: 'saved', job: { complaint: { words: 'theirs' } } });
    expect(store.writes).toEqual([]);
  });

  test('both wrote the same: no question is asked', async () => {
    const saver = store.saver();
    saver.save('complaint', words('same'));
    store.write('complaint', { types: [], words: 'same' });
    await pass();
    expect(saver.getView()).toMatchObject({ state: 'saved', conflict: null });
  });

  test('news of one’s own change are no news', async () => {
    const saver = store.saver();
    saver.save('complaint', words('mine'));
    await pass(700);
    saver.heard(store.job.version);
    await pass();
    expect(store.told).toEqual([]);
    store.write('codes', [{ code: 'P0442', status: 'stored' }]);
    saver.heard(store.job.version);
    await pass();
    expect(store.told).toEqual([['codes']]);
    expect(saver.getView().job.codes).toHaveLength(1);
  });
});

describe('without a server', () => {
  test('drafts wait, are kept on the device, and go out when it is back', async () => {
    const saver = store.saver();
    store.isAway = true;
    saver.save('complaint', words('mine'));
    await pass();
    expect(saver.getView()).toMatchObject({ state: 'queued', job: { complaint: { words: 'mine' } } });
    expect(store.kept).toEqual({ complaint: { value: words('mine'), base: words('old') } });
    store.isAway = false;
    await pass();
    expect(saver.getView().state).toBe('saved');
    expect(store.job.complaint.words).toBe('mine');
  });

  test('drafts of a closed window are sent by the next one, or asked about', async () => {
    const kept: Drafts = { complaint: { value: words('kept'), base: words('old') } };
    store.saver(kept);
    await pass();
    expect(store.job.complaint.words).toBe('kept');
    store.write('complaint', words('theirs'));
    const saver = store.saver({ complaint: { value: words('kept'), base: words('old') } });
    await pass();
    expect(store.job.complaint.words).toBe('theirs');
    expect(saver.getView().conflict?.section).toBe('complaint');
  });
});

test('a value that the server does not take is kept, said, and can be taken back', async () => {
  const saver = store.saver();
  store.refuses = new Error('no');
  saver.save('complaint', words('bad'));
  await pass();
  expect(saver.getView()).toMatchObject({ state: 'refused', refused: { section: 'complaint' } });
  expect(saver.getView().job.complaint.words).toBe('bad');
  store.refuses = null;
  saver.takeBack();
  await pass();
  expect(saver.getView()).toMatchObject({ state: 'saved', job: { complaint: { words: 'old' } } });
  expect(store.writes).toEqual([]);
});
