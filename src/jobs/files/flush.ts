/** Makes what was written outlive a loss of power. */
import { open } from 'node:fs/promises';

/** Flushes a folder, so that a name in it stays. Windows has no such call and does not need it. */
export async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
