/** The languages of the hand-over sheet. A third is one file like `de.ts`, its code in `HAND_OVER_LANGUAGES` and a line here. */
import type { HandOverLanguage } from '../hand-over.ts';
import { DE } from './de.ts';
import { EN } from './en.ts';
import type { HandOverWords } from './words.ts';

export const HAND_OVER_WORDS: Readonly<Record<HandOverLanguage, HandOverWords>> = { en: EN, de: DE };
