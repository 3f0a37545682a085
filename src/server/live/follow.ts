/** The thread that follows a live recording until it is told to end. */
import type { CompanionTask } from '../work/tasks.ts';
import { Follower } from './follower.ts';
import type { FromFollower, ToFollower } from './live-tasks.ts';

export function follow({ port, ...task }: CompanionTask<'follow'>): Promise<void> {
  const follower = new Follower(task);
  let isDue = false;
  return new Promise((resolve, reject) => {
    const tell = (): void => {
      isDue = false;
      try {
        port.postMessage(follower.follow() satisfies FromFollower);
      } catch (error) {
        port.close();
        reject(error);
      }
    };
    port.on('close', resolve);
    port.on('message', (message: ToFollower) => {
      if (message.kind === 'end') return port.close();
      if (message.kind === 'rows') follower.add(message.rows);
      else follower.say(message.procedure, message.ventMarks);
      // Messages that came meanwhile are taken first, so that a slow machine falls behind in updates only.
      if (!isDue) setImmediate(tell);
      isDue = true;
    });
  });
}
