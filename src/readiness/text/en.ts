import { CONDITIONS_EN } from './en-conditions.ts';
import { INSPECTION_EN } from './en-inspection.ts';
import { PLAN_EN } from './en-plan.ts';
import type { ReadinessWords } from './readiness-words.ts';

export const READINESS_EN: ReadinessWords = { ...CONDITIONS_EN, ...PLAN_EN, ...INSPECTION_EN };
