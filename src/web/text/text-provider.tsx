import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Text } from './en.ts';
import {
  LANGUAGES,
  type Language,
  rememberedLanguage,
  rememberLanguage,
  type Spoken,
  SpokenContext,
} from './language.ts';

/** Loads the catalogue of the language chosen; nothing is drawn before it is there. */
export function TextProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const [wished, setWished] = useState<Language>(rememberedLanguage);
  const [spoken, setSpoken] = useState<{ language: Language; text: Text } | null>(null);
  useEffect(() => {
    let isCurrent = true;
    LANGUAGES[wished].load().then((text) => {
      if (!isCurrent) return;
      document.documentElement.lang = wished;
      setSpoken({ language: wished, text });
    });
    return () => {
      isCurrent = false;
    };
  }, [wished]);
  const value = useMemo<Spoken | null>(
    () =>
      spoken && {
        ...spoken,
        locale: LANGUAGES[spoken.language].locale,
        setLanguage: (language) => {
          rememberLanguage(language);
          setWished(language);
        },
      },
    [spoken],
  );
  return value && <SpokenContext value={value}>{children}</SpokenContext>;
}
