import { CONDITIONS_DE } from './de-conditions.ts';
import { INSPECTION_DE } from './de-inspection.ts';
import { PLAN_DE } from './de-plan.ts';
import type { ReadinessWords } from './readiness-words.ts';

export const READINESS_DE: ReadinessWords = { ...CONDITIONS_DE, ...PLAN_DE, ...INSPECTION_DE };
