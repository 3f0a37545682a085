import type { PartsText } from '../../text/parts.en.ts';
import { allUnbroken } from '../../text/unbroken.ts';
import { useLate } from '../../text/use-late.ts';
import { useAllInUnits } from '../../units/use-in-units.ts';

const LOAD = {
  en: async (): Promise<PartsText> => allUnbroken((await import('../../text/parts.en.ts')).PARTS_EN),
  de: async (): Promise<PartsText> => allUnbroken((await import('../../text/parts.de.ts')).PARTS_DE),
};

/** What is known of the parts, in the units chosen; long, so it comes with the drawing and not with every page. */
export const usePartsText = (): PartsText | undefined => useAllInUnits(useLate(LOAD));
