/** Names, sizes and contents of a whole folder, to see whether anything in it has changed. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

export function treeOf(folder: string): Readonly<Record<string, string>> {
  const tree: Record<string, string> = {};
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    tree[relative(folder, path)] = createHash('sha256').update(readFileSync(path)).digest('hex');
  }
  return tree;
}
