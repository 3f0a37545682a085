/** Files appear whole or not at all: written beside their place under another name, then moved there. */
import { randomUUID } from 'node:crypto';
import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { EXIT } from './exit-codes.ts';
import { cannotWrite, Failure } from './failure.ts';
import { makeFolder } from './make-folder.ts';
import { isFinished, isUnfinished } from './stop-signals.ts';

export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Writes a group of files; when one cannot be written none of the group is put in place. */
export function writeWhole(files: readonly OutputFile[]): void {
  const staged: { from: string; to: string }[] = [];
  try {
    for (const { path, content } of files) {
      const from = join(dirname(path), `.${basename(path)}.${randomUUID().slice(0, 8)}.part`);
      try {
        makeFolder(dirname(path));
        isUnfinished(from);
        staged.push({ from, to: path });
        writeFileSync(from, content);
      } catch (error) {
        throw cannotWrite(path, error);
      }
    }
    for (const { from, to } of staged) {
      try {
        renameSync(from, to);
      } catch (error) {
        throw cannotWrite(to, error);
      }
    }
  } finally {
    for (const { from } of staged) {
      rmSync(from, { force: true });
      isFinished(from);
    }
  }
}

/** An output must never be one of the inputs. */
export function refuseOverwritingInput(outputs: readonly string[], inputs: readonly string[]): void {
  const clash = outputs.find((path) => inputs.includes(path));
  if (clash === undefined) return;
  throw new Failure(EXIT.usage, `the output ${clash} is also an input`, {
    file: clash,
    advice: 'Give the output another name.',
  });
}
