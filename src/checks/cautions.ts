/**
 * Cautions by name. A check lists those that must be acknowledged before its steps show; the words stand in `text/`.
 * Sources: common practice and public safety sheets; a figure carries its mark in the words.
 */
export const CAUTION_IDS = [
  'vapour',
  'no shop air',
  'pressure ceiling',
  'vacuum ceiling',
  'open slowly',
  'sealed tank',
  'hot and moving',
  'lift',
  'open fuel',
  'electrical',
  'carbon',
  'module may act',
  'road',
  'outdoors',
] as const;
export type CautionId = (typeof CAUTION_IDS)[number];
