/** Named values of the shop: limits in use, name and address, and what the program itself must remember. */
import type { z } from 'zod';
import type { Actor } from '../job-store.ts';
import { StoreProblem } from '../store-problem.ts';
import type { StoreContext } from './store-context.ts';

export interface SettingsStore {
  /** undefined: never set. */
  read<Schema extends z.ZodType>(name: string, schema: Schema): Promise<z.output<Schema> | undefined>;
  write(actor: Actor, name: string, value: unknown): Promise<void>;
  remove(name: string): Promise<void>;
}

export function settingsStore(context: StoreContext): SettingsStore {
  return {
    async read(name, schema) {
      const row = await context.run((sql) =>
        sql.selectFrom('settings').select('value').where('name', '=', name).executeTakeFirst(),
      );
      if (row === undefined) return undefined;
      const parsed = schema.safeParse(row.value);
      if (parsed.success) return parsed.data;
      throw new StoreProblem(
        'corrupt',
        `The setting "${name}" does not have the expected form: ${parsed.error.message}`,
        {
          where: name,
          advice: 'Set it again on the settings page.',
        },
      );
    },
    async write(actor, name, value) {
      const row = { value: JSON.stringify(value), changed_at: context.now(), changed_by: actor.name };
      await context.run((sql) =>
        sql
          .insertInto('settings')
          .values({ name, ...row })
          .onConflict((conflict) => conflict.column('name').doUpdateSet(row))
          .execute(),
      );
    },
    async remove(name) {
      await context.run((sql) => sql.deleteFrom('settings').where('name', '=', name).execute());
    },
  };
}
