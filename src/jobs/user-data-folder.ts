/** Where the platform keeps a user's data. */
import { homedir } from 'node:os';
import { join } from 'node:path';

const NAME = 'vaporwright';

export function userDataFolder(): string {
  if (process.platform === 'win32') return join(process.env.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local'), NAME);
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', NAME);
  // The database's own user may not look into root's home folder.
  if (process.getuid?.() === 0) return join('/var/lib', NAME);
  return join(process.env.XDG_DATA_HOME || join(homedir(), '.local', 'share'), NAME);
}
