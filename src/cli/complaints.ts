/** What an owner notices, as the priors of the finding know it. */
export const COMPLAINTS = ['slow-fill', 'rough-after-fill', 'smell', 'not-ready', 'hiss'] as const;
