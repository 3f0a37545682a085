/** What the shop sets once. */

import type { SettingsStore } from '../../jobs/store/settings.ts';
import { FIRST_SETTINGS, type Settings, settingsSchema } from '../contract/settings.ts';
import type { App, Parts } from '../parts.ts';
import { REFUSALS } from './answers.ts';

const NAME = 'shop';

export const readSettings = async (settings: SettingsStore): Promise<Settings> =>
  (await settings.read(NAME, settingsSchema)) ?? FIRST_SETTINGS;

export function settingsRoutes(app: App, { store }: Parts): void {
  app.get(
    '/settings',
    {
      config: { needs: 'reader' },
      schema: { summary: 'Settings of the shop', response: { 200: settingsSchema, ...REFUSALS } },
    },
    () => readSettings(store.settings),
  );

  app.put(
    '/settings',
    {
      config: { needs: 'owner' },
      schema: {
        summary: 'Replace the settings of the shop',
        body: settingsSchema,
        response: { 200: settingsSchema, ...REFUSALS },
      },
    },
    async ({ body, who }) => {
      await store.settings.write(who.actor, NAME, body);
      return body;
    },
  );
}
