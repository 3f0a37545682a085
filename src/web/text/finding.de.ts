import type { FINDING_EN } from './finding.en.ts';

export const FINDING_DE: typeof FINDING_EN = {};
