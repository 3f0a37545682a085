/** The inspection rules that ship, each with its date and mark; apart from their format, so that words can name them alone. */
import type { InspectionRule } from './inspection.ts';

const MILE_M = 1609.344;

export const FEDERAL_RULE: InspectionRule = {
  schema: 'vaporwright-inspection-1',
  id: 'us-federal',
  name: 'United States, federal on-board check',
  asOf: '2001-04-05',
  source: '40 CFR 85.2207 and 85.2222(c) as amended by 66 FR 18156; allowance as a state programme repeats it',
  mark: 'secondary source',
  firstModelYear: 1996,
  allowances: [
    { fromYear: 1996, toYear: 2000, mostIncomplete: 2 },
    { fromYear: 2001, mostIncomplete: 1 },
  ],
  countContinuous: false,
};

export const EVAP_ONLY_RULE: InspectionRule = {
  schema: 'vaporwright-inspection-1',
  id: 'us-evap-only',
  name: 'California, petrol',
  asOf: '2019-07-01',
  source: '16 CCR 3340.42.2(c) and station pages; allowances and the 15 warm-ups and 200 miles are not confirmed',
  mark: 'from memory',
  firstModelYear: 1996,
  allowances: [
    { fromYear: 1996, toYear: 1999, mostIncomplete: 1 },
    { fromYear: 2000, mostIncomplete: 1, only: ['evaporative system'] },
  ],
  countContinuous: false,
  permanentCodes: { fromYear: 2010, ignoredAfter: { warmUps: 15, distanceM: 200 * MILE_M } },
};

export const INSPECTION_RULES: readonly InspectionRule[] = [FEDERAL_RULE, EVAP_ONLY_RULE];
