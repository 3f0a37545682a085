import { useEffect, useState } from 'react';
import { readSession } from '../api/client.ts';
import { readSettings } from '../api/shop.ts';
import { useText } from '../text/language.ts';

/** Whose name stands under an entry: who is signed in, else who works here by the settings. */
export function useWho(): string {
  const { you } = useText().job;
  const [name, setName] = useState<string | null>(null);
  useEffect(() => {
    let isCurrent = true;
    Promise.all([readSession(), readSettings()]).then(
      ([session, settings]) => isCurrent && setName(session.user?.name ?? settings.technician ?? null),
      () => undefined,
    );
    return () => {
      isCurrent = false;
    };
  }, []);
  return name === null || name === '' ? you : name;
}
