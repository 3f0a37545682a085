/**
 * Recordings that could be made next, as checks. What they tell apart is not in a table: it is simulated for the job at
 * hand (`simulated/`), and what they showed comes back through the finding. Minutes are judgement.
 */
import { type Check, check } from '../check.ts';

const recording = (id: string, minutes: number, setups: Check['setups'], cautions: Check['cautions']): Check =>
  check('recording', {
    id,
    minutes,
    setups,
    equipment: ['logger', 'tool that commands valves'],
    cautions,
    // not used: chances are simulated
    sensitivity: 0.5,
    specificity: 0.5,
    outcomes: [],
  });

export const RECORDINGS: readonly Check[] = [
  recording('R01', 12, ['tool', 'warm'], ['module may act', 'vacuum ceiling']),
  { ...recording('R02', 25, ['tool', 'warm'], ['module may act', 'open fuel', 'vapour']), risk: 3 },
  recording('R03', 14, ['tool', 'warm'], ['module may act']),
  {
    ...recording('R04', 15, ['tool', 'warm', 'lift'], ['module may act', 'lift', 'hot and moving', 'vapour']),
    risk: 1,
  },
];
