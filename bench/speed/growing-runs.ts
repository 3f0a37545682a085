/** The kinds of run beside the vacuum draw that the growing finding follows, by the full simulation. */

import { drawAndHold, simulateRecording, TEST_CAR } from '../../src/diagnosis/growing/simulated-recording.ts';
import { carOf, recordRun, type SimulatedRun } from '../../src/diagnosis/growing/simulated-run.ts';
import type { Recording } from '../../src/recording/recording.ts';
import type { Procedure } from '../../src/simulation/procedure.ts';
import { pumpRun } from '../../src/simulation/procedures/pump-run.ts';
import { refuelling } from '../../src/simulation/procedures/refuelling.ts';
import { sealedHold } from '../../src/simulation/procedures/sealed-hold.ts';
import { randomStream } from '../../src/simulation/random.ts';
import type { Car, LayoutId } from '../../src/system/car.ts';
import type { Fault } from '../../src/system/faults/fault.ts';

export interface OtherRun {
  readonly name: string;
  readonly car: Car;
  readonly record: (rateHz: number) => Recording;
}

const FILL_FRACTION = 0.4;

function simulated(
  name: string,
  layout: LayoutId,
  procedure: Procedure,
  faults: readonly Fault[],
  tankGaugePa?: number,
): OtherRun {
  const run: SimulatedRun = { name, layout, procedure, faults, ...(tankGaugePa !== undefined && { tankGaugePa }) };
  return { name, car: carOf(layout), record: (rateHz) => recordRun(run, rateHz, FILL_FRACTION) };
}

const LEAK: Fault = { kind: 'leak', place: 'tankTop', size: 0.5e-3 };
/** A sensor that reads so far too high beside a hole [Pa]. */
const ZERO_ERROR_PA = 450;

function twoFaults(rateHz: number): Recording {
  const lengthS = 180;
  const recording = simulateRecording(
    {
      procedure: 'vacuum-draw',
      commands: drawAndHold(lengthS, 0),
      lengthS,
      rateHz,
      form: 'leak',
      leakDiameterMm: 1,
      noisePa: 8,
      spread: 0.6,
      engineRuns: true,
    },
    randomStream(3),
  );
  const shifted = recording.channels.tankPressureGaugePa!.map((p) => p + ZERO_ERROR_PA);
  return { ...recording, channels: { ...recording.channels, tankPressureGaugePa: shifted } };
}

export const OTHER_RUNS: readonly OtherRun[] = [
  simulated('pump run, sound', 'pump-reference', pumpRun(), []),
  simulated('pump run, hole of 0.5 mm', 'pump-reference', pumpRun(), [LEAK]),
  simulated('pump run, 15 min on the tank', 'pump-reference', pumpRun({ tankS: 900 }), [LEAK]),
  simulated('sealed hold, sound', 'sealed-tank', sealedHold(), [], 12_000),
  simulated('sealed hold, hole of 0.5 mm', 'sealed-tank', sealedHold(), [LEAK], 0),
  simulated('refuelling, sound', 'engine-vacuum', refuelling({ volumeM3: 0.025 }), []),
  simulated('refuelling, vent stuck shut', 'engine-vacuum', refuelling(), [{ kind: 'vent-stuck-shut' }]),
  { name: 'draw, hole and zero error', car: TEST_CAR, record: twoFaults },
];
