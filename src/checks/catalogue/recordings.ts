/**
 * Recordings that could be made next, as checks. What they tell apart is not in a table: it is simulated for the job at
 * hand (`simulated/`), and what they showed comes back through the finding. Minutes are judgement.
 */
import { type Check, check } from '../check.ts';

const EQUIPMENT = ['logger', 'tool that commands valves'];

const recording = (id: string, minutes: number, setups: Check['setups'], cautions: Check['cautions']): Check =>
  check('recording', {
    id,
    minutes,
    setups,
    equipment: EQUIPMENT,
    cautions,
    // not used: chances are simulated
    sensitivity: 0.5,
    specificity: 0.5,
    outcomes: [],
  });

export const RECORDINGS: readonly Check[] = [
  recording('R01', 12, ['tool', 'warm'], ['module may act', 'vacuum ceiling', 'hot and moving', 'vapour']),
  { ...recording('R02', 25, ['tool', 'warm'], ['module may act', 'open fuel', 'hot and moving', 'vapour']), risk: 3 },
  recording('R03', 14, ['tool', 'warm'], ['module may act', 'hot and moving', 'vapour']),
  {
    ...recording('R04', 15, ['tool', 'warm', 'lift'], ['module may act', 'lift', 'hot and moving', 'vapour']),
    equipment: [...EQUIPMENT, 'soft clamp'],
    risk: 1,
  },
];
