import { useEffect, useState } from 'react';
import { type Language, useSpoken } from '../../text/language.ts';
import type { PartsText } from '../../text/parts.en.ts';
import { allUnbroken } from '../../text/unbroken.ts';

const LOAD: Readonly<Record<Language, () => Promise<PartsText>>> = {
  en: async () => allUnbroken((await import('../../text/parts.en.ts')).PARTS_EN),
  de: async () => allUnbroken((await import('../../text/parts.de.ts')).PARTS_DE),
};

/** What is known of the parts; long, so it comes with the drawing and not with every page. */
export function usePartsText(): PartsText | undefined {
  const { language } = useSpoken();
  const [text, setText] = useState<PartsText>();
  useEffect(() => {
    let isCurrent = true;
    LOAD[language]().then((loaded) => {
      if (isCurrent) setText(loaded);
    });
    return () => {
      isCurrent = false;
    };
  }, [language]);
  return text;
}
