import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Failure } from './failure.ts';
import { refuseOverwritingInput, writeWhole } from './write-whole.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'vaporwright-write-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('writes, makes folders on the way, replaces what was there', () => {
  const path = join(folder, 'deep', 'a.txt');
  writeWhole([{ path, content: 'old' }]);
  writeWhole([{ path, content: 'new' }]);
  expect(readFileSync(path, 'utf8')).toBe('new');
  expect(readdirSync(join(folder, 'deep'))).toEqual(['a.txt']);
});

test('when one of a group cannot be written, none appears and nothing unfinished stays', () => {
  writeFileSync(join(folder, 'blocker'), '');
  const group = [
    { path: join(folder, 'first.txt'), content: 'x' },
    { path: join(folder, 'blocker', 'second.txt'), content: 'y' },
  ];
  expect(() => writeWhole(group)).toThrow(Failure);
  expect(readdirSync(folder)).toEqual(['blocker']);
});

test('an output that is an input is refused', () => {
  expect(() => refuseOverwritingInput(['a.csv'], ['b.csv', 'a.csv'])).toThrow('is also an input');
  expect(() => refuseOverwritingInput(['a.csv'], ['b.csv'])).not.toThrow();
});

test.runIf(existsSync('/proc/self'))('a place where no folder can be made ends with words, not in a wait', () => {
  expect(() => writeWhole([{ path: '/proc/no-such-folder/deep/a.txt', content: 'x' }])).toThrow(
    'cannot write /proc/no-such-folder/deep/a.txt',
  );
});
