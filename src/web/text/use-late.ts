import { useEffect, useState } from 'react';
import { type Language, useSpoken } from './language.ts';

/**
 * Words that few pages need: fetched with the first that does, not with every page.
 *
 * @param load one loader for each language; must stay the same object
 * @returns the words, undefined until they are there
 */
export function useLate<T>(load: Readonly<Record<Language, () => Promise<T>>>): T | undefined {
  const { language } = useSpoken();
  const [loaded, setLoaded] = useState<{ readonly language: Language; readonly words: T }>();
  useEffect(() => {
    let isCurrent = true;
    load[language]().then((words) => {
      if (isCurrent) setLoaded({ language, words });
    });
    return () => {
      isCurrent = false;
    };
  }, [language, load]);
  return loaded?.language === language ? loaded.words : undefined;
}
