/** Numbers that are each possible and cannot be true together. */
import type { NumericLikelihood } from '../check.ts';
import type { Readings } from './numeric.ts';

interface Contradiction {
  readonly field: string;
  readonly text: string;
}

/** Two pressures nearer than this give no slope [Pa]. */
const SPAN_PA = 300;
/** What reading error alone may do to a pressure [Pa]. */
const SLACK_PA = 60;

export function contradictions(kind: NumericLikelihood, r: Readings): readonly Contradiction[] {
  const found: Contradiction[] = [];
  const say = (field: string, text: string) => found.push({ field, text: `${field}: ${text}` });
  switch (kind) {
    case 'hold':
      if (r.start! * r.end! < 0)
        say('end', 'start and end have opposite signs; a hold ends between its start and zero');
      if (Math.abs(r.end!) > Math.abs(r.start!) + 300)
        say(
          'end',
          'is further from zero than the start; vapour is rising or the two are swapped: let it settle and repeat',
        );
      if (Math.abs(r.start!) < 500) say('start', 'is too near zero to show a leak; expected at least 500 Pa (2 inH2O)');
      break;
    case 'seat loss':
      if (r['after 30 s']! < r.start! - SLACK_PA)
        say('after 30 s', 'is more vacuum than at the start; are the two swapped?');
      break;
    case 'two readings':
      if (Math.abs(r['second applied']! - r['first applied']!) < SPAN_PA)
        say('second applied', 'is too near the first; expected at least 300 Pa (1.2 inH2O) between them');
      break;
    case 'canister weight':
      if (r.weight! < r['dry weight']! - 0.05)
        say('weight', 'is below the dry weight; are the two swapped, or is it another canister’s dry weight?');
      break;
    case 'flow':
      if ((r['blank flow'] ?? 0) > r.flow! + 1e-6)
        say('blank flow', 'is more than the flow with the car connected; are the two swapped?');
      break;
    case 'pump ratio':
      if (r['reference before']! * r['reference after']! <= 0 || r['reference before']! * r.tank! < 0)
        say('reference after', 'the three pressures must have one sign and the references must not be zero');
      break;
    default:
  }
  return found;
}
