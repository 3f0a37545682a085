/** Makes a folder and what is missing above it, one level at a time. */
import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { cannotWrite } from './failure.ts';

/** A file in the way does not count: making a folder there fails with the system's own words. */
const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

/**
 * Node's own recursive way (seen in 20.20) never returns where the system says "no such folder" below a folder that is
 * there, as /proc does; here every level is tried once and the system's answer is passed on.
 */
export function makeFolder(path: string): void {
  const missing: string[] = [];
  for (let level = resolve(path); !isFolder(level); level = dirname(level)) missing.unshift(level);
  for (const level of missing) {
    try {
      mkdirSync(level);
    } catch (error) {
      // Made meanwhile by another program: that is what was wanted.
      if (!isFolder(level)) throw error;
    }
  }
}

/** The folder that a file goes into; said in words where it cannot be had, before any work is done for it. */
export function makeFolderFor(file: string): void {
  try {
    makeFolder(dirname(file));
  } catch (error) {
    throw cannotWrite(file, error);
  }
}
