/** What a pump run or a sealed hold leaves untested, in sentences. */
import type { PumpLimit } from '../pump/limits.ts';
import type { SealedLimit } from '../sealed/limits.ts';

export function limitText(limit: PumpLimit | SealedLimit): string {
  switch (limit.kind) {
    case 'no-reference':
      return 'The pump never ran through its reference orifice, so a weak pump and a hole look alike.';
    case 'tank-untested':
      return 'The pump was never turned to the tank, so the tank side is not tested.';
    case 'tank-turn-short':
      return `The pump worked on the tank for ${Math.round(limit.lastedS)} s only; its pressure had not settled.`;
    case 'purge-untested':
      return 'Purge was never opened on the pumped tank, so the purge valve is not proven.';
    case 'tank-side-untested':
      return `The tank stood at ${Math.round(limit.standingGaugePa)} Pa with a temperature swing of ${limit.temperatureSwingK.toFixed(1)} K: too little to show whether its side is tight. Record over a night or a warm-up.`;
    case 'canister-side-untested':
      return 'The canister side was never shut under vacuum, or its pressure not recorded, so it is not tested.';
    case 'isolation-untested':
      return 'The isolation valve was never commanded open, so what it does is unknown.';
  }
}
