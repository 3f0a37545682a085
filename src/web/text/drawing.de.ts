import type { DRAWING_EN } from './drawing.en.ts';

export const DRAWING_DE: typeof DRAWING_EN = {};
