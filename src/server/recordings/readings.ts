/** Recordings of jobs as the pages take them: read once in a worker thread, then from the disk. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import type { FileStore } from '../../jobs/job-store.ts';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import type { Preview } from '../contract/recordings.ts';
import { readSamplesHead, writeSamplesHead } from '../contract/samples.ts';
import { Refusal } from '../refusal.ts';
import type { Workshop } from '../work/workshop.ts';
import { ByteCache } from './byte-cache.ts';
import { overlayPhases } from './overlay-phases.ts';
import { keptPreview, type ReadingInputs, readingKey, samplesPath } from './parsed.ts';

/** The folder is emptied at the start when it has grown beyond this (judgement). */
const MOST_BYTES = 4 * 1024 ** 3;

async function folderBytes(folder: string): Promise<number> {
  let bytes = 0;
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    bytes += entry.isDirectory() ? await folderBytes(path) : (await stat(path)).size;
  }
  return bytes;
}

export interface SamplesAnswer {
  readonly tag: string;
  readonly bytes: number;
  /** Small ones at once, long ones piece by piece. */
  readonly body: () => Buffer | Readable;
}

async function* withFront(front: Uint8Array, rest: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  yield front;
  yield* rest;
}

type FileHead = Awaited<ReturnType<typeof readSamplesHead>> & { readonly size: number };

const headOfBytes = async (bytes: Uint8Array): Promise<FileHead> => ({
  ...(await readSamplesHead(async (from, length) => bytes.subarray(from, from + length))),
  size: bytes.byteLength,
});

async function headOfFile(path: string): Promise<FileHead> {
  const handle = await open(path, 'r');
  try {
    const head = await readSamplesHead(async (from, length) => {
      const bytes = new Uint8Array(length);
      await handle.read(bytes, 0, length, from);
      return bytes;
    });
    return { ...head, size: (await handle.stat()).size };
  } finally {
    await handle.close();
  }
}

export class Readings {
  readonly #folder: string;
  readonly #files: FileStore;
  readonly #workshop: Workshop;
  readonly #program: string;
  readonly #bytes = new ByteCache();
  readonly #running = new Map<string, Promise<Preview>>();

  private constructor(folder: string, files: FileStore, workshop: Workshop, program: string) {
    this.#folder = folder;
    this.#files = files;
    this.#workshop = workshop;
    this.#program = program;
  }

  static async open(folder: string, files: FileStore, workshop: Workshop, program: string): Promise<Readings> {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    if ((await folderBytes(folder)) > MOST_BYTES) {
      await rm(folder, { recursive: true, force: true });
      await mkdir(folder, { recursive: true, mode: 0o700 });
    }
    return new Readings(folder, files, workshop, program);
  }

  inputsOf(car: Job['car'], entry: Pick<RecordingEntry, 'sha256' | 'fileName' | 'mapping' | 'facts'>): ReadingInputs {
    const { sha256, fileName, mapping, facts } = entry;
    return {
      path: this.#files.path(sha256),
      sha256,
      fileName,
      program: this.#program,
      ...(mapping === undefined ? {} : { mapping }),
      ...(facts === undefined || Object.keys(facts).length === 0 ? {} : { notes: facts }),
      ...(car?.pressureSensor === undefined ? {} : { pressureSensor: car.pressureSensor }),
    };
  }

  /** How a recording is understood. Two who ask at once are answered by one reading. */
  async preview(inputs: ReadingInputs, signal?: AbortSignal): Promise<Preview> {
    const key = readingKey(inputs);
    const kept = await keptPreview(this.#folder, key, this.#bytes);
    if (kept !== undefined && (kept.report === null || (await this.#hasSamples(key)))) return kept;
    const running = this.#running.get(key);
    if (running !== undefined) return running;
    const reading = this.#workshop
      .run('read', { folder: this.#folder, inputs }, signal === undefined ? {} : { signal })
      .finally(() => this.#running.delete(key));
    this.#running.set(key, reading);
    return reading;
  }

  async samples(job: Pick<Job, 'car'>, entry: RecordingEntry): Promise<SamplesAnswer> {
    const inputs = this.inputsOf(job.car, entry);
    const { problem } = await this.preview(inputs);
    if (problem !== null) {
      const { code, message, ...facts } = problem;
      throw new Refusal(code, message, facts);
    }
    const key = readingKey(inputs);
    const path = samplesPath(this.#folder, key);
    const whole = await this.#bytes.read(path);
    const { head, dataStart, size } = whole === undefined ? await headOfFile(path) : await headOfBytes(whole);
    const front = writeSamplesHead({
      ...head,
      label: entry.label,
      phases: overlayPhases(head.foundPhases, entry.phases ?? []),
    });
    return {
      tag: `"${createHash('sha256').update(key).update(front).digest('base64url')}"`,
      bytes: front.length + size - dataStart,
      body: () =>
        whole === undefined
          ? Readable.from(withFront(front, createReadStream(path, { start: dataStart, highWaterMark: 1 << 20 })))
          : Buffer.concat([front, whole.subarray(dataStart)]),
    };
  }

  async #hasSamples(key: string): Promise<boolean> {
    return (await stat(samplesPath(this.#folder, key)).catch(() => undefined))?.isFile() === true;
  }
}
