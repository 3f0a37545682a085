/** What an owner notices, by the word on the command line and by the name that the priors of the finding use. */
import type { Complaint } from '../diagnosis/priors/root-causes.ts';

export const COMPLAINTS = {
  'slow-fill': 'slow fill',
  'rough-after-fill': 'rough after fill',
  smell: 'smell',
  'not-ready': 'not ready',
  hiss: 'hiss or collapse',
} as const satisfies Readonly<Record<string, Complaint>>;

export type ComplaintWord = keyof typeof COMPLAINTS;
