/**
 * How often each root cause stands behind a complaint or code, before any recording: the shop's seed values, as
 * editable data. All figures are judgement, anchored on public hints (annual check-engine repair index; public code
 * collections): point values in percent, each column about 100; a row absent from a column is under 1 %.
 */
export const COMPLAINTS = [
  'P0455/57',
  'P0442',
  'P0456',
  'P0441/0497',
  'P0496',
  'P0446/2422',
  'slow fill',
  'rough after fill',
  'smell',
  'not ready',
  'hiss or collapse',
] as const;
export type Complaint = (typeof COMPLAINTS)[number];

/** F01 to F20 by complaint, in the order of `COMPLAINTS`; 0 stands for "under 1 %". */
export const ROOT_CAUSE_PERCENT: Readonly<Record<string, readonly number[]>> = {
  F01: [38, 18, 12, 1, 0, 1, 0, 0, 15, 2, 2],
  F02: [10, 12, 11, 1, 0, 1, 5, 0, 14, 0, 0],
  F03: [10, 14, 18, 22, 85, 6, 0, 70, 3, 2, 10],
  F04: [3, 1, 1, 38, 0, 2, 0, 0, 2, 6, 0],
  F05: [17, 17, 15, 4, 0, 8, 0, 0, 2, 2, 0],
  F06: [3, 0, 0, 6, 2, 58, 42, 4, 4, 2, 55],
  F07: [4, 6, 5, 1, 0, 3, 1, 0, 6, 0, 1],
  F08: [2, 1, 1, 5, 5, 9, 20, 12, 12, 1, 6],
  F09: [8, 11, 11, 8, 0, 2, 5, 2, 8, 0, 4],
  F10: [2, 9, 11, 0, 0, 0, 0, 0, 16, 0, 0],
  F11: [1, 4, 6, 0, 0, 0, 0, 0, 8, 0, 0],
  F12: [0, 0, 0, 0, 0, 2, 18, 4, 3, 0, 5],
  F13: [0, 0, 0, 1, 0, 3, 6, 0, 1, 0, 6],
  F14: [1, 3, 4, 2, 6, 2, 0, 0, 0, 9, 0],
  F15: [0, 0, 0, 5, 0, 1, 0, 0, 0, 3, 0],
  F16: [0, 0, 0, 0, 0, 0, 0, 0, 0, 15, 0],
  F17: [1, 2, 3, 2, 0, 2, 2, 0, 0, 6, 1],
  F18: [0, 0, 0, 1, 0, 0, 1, 0, 0, 2, 10],
  F19: [0, 1, 1, 3, 2, 0, 0, 8, 0, 3, 0],
  F20: [0, 1, 1, 0, 0, 0, 0, 0, 6, 47, 0],
};

/** Codes by the column of the table above that they belong to. */
const CODE_COLUMNS: Readonly<Record<string, Complaint>> = {
  P0455: 'P0455/57',
  P0457: 'P0455/57',
  P0442: 'P0442',
  P0456: 'P0456',
  P0441: 'P0441/0497',
  P0497: 'P0441/0497',
  P0496: 'P0496',
  P0446: 'P0446/2422',
  P2422: 'P0446/2422',
};

/** Columns that complaints and codes speak of, each once; a code that no column knows speaks of none. */
export const columnsOf = (complaints: readonly Complaint[], codes: readonly string[]): Complaint[] => [
  ...new Set([
    ...complaints,
    ...codes.flatMap((code) => {
      const column = CODE_COLUMNS[code.trim().toUpperCase()];
      return column === undefined ? [] : [column];
    }),
  ]),
];
