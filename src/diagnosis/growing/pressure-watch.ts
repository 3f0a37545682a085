/** What one pressure channel says of its sensor, followed reading by reading in bounded room. */
import { foundRails, noiseOffRails, type Rails } from '../likelihood/found-rails.ts';
import { characterise, type SensorCharacter } from '../likelihood/observations.ts';
import { RAIL_SHARE } from '../single-run/observed-channel.ts';
import type { Readings } from './bin.ts';
import { SensorSample } from './sensor-sample.ts';
import { SpikeWatch } from './spike-watch.ts';
import { StillRun } from './still-run.ts';

/** Smallest standing-out that makes a spike while the sensor's noise is not yet known [Pa]. */
const UNKNOWN_SENSOR: SensorCharacter = { stepPa: 0, noisePa: 8, sampleGapS: 0.1 };

export class PressureWatch {
  readings = 0;
  lastPa = Number.NaN;
  low = Number.POSITIVE_INFINITY;
  high = Number.NEGATIVE_INFINITY;
  private atLow = 0;
  private atHigh = 0;
  private readonly sensor = new SensorSample();
  private readonly spikes = new SpikeWatch();
  private readonly still = new StillRun();
  private known: SensorCharacter | undefined;

  /** @param into the sums of the bin that the reading falls in */
  add(timeS: number, gaugePa: number, into: Readings): void {
    into.count++;
    into.sumTimeS += timeS;
    into.sumGaugePa += gaugePa;
    this.readings++;
    this.lastPa = gaugePa;
    if (gaugePa < this.low) {
      this.low = gaugePa;
      this.atLow = 0;
    }
    if (gaugePa > this.high) {
      this.high = gaugePa;
      this.atHigh = 0;
    }
    if (gaugePa === this.low) this.atLow++;
    if (gaugePa === this.high) this.atHigh++;
    this.sensor.add(timeS, gaugePa);
    this.still.add(timeS, gaugePa, this.character.stepPa);
    this.spikes.add(timeS, gaugePa, into, this.character);
  }

  get character(): SensorCharacter {
    return this.known ?? UNKNOWN_SENSOR;
  }

  /** Looks anew at the sensor's step and noise. */
  characterise(rails: Rails): void {
    const { timeS, gaugePa } = this.sensor.readings();
    this.known = characterise(timeS, gaugePa, rails);
  }

  freezeOnsetS(): number | undefined {
    return this.still.onsetS();
  }

  /** Where the readings pile up, as `foundRails` tells it from a sample of them. */
  piles(): Rails {
    const { gaugePa } = this.sensor.readings();
    const found = foundRails(gaugePa, this.character.stepPa, noiseOffRails(gaugePa));
    // what the sample takes for its extreme may have been passed by a reading outside it
    return {
      low: found.low <= this.low ? found.low : Number.NEGATIVE_INFINITY,
      high: found.high >= this.high ? found.high : Number.POSITIVE_INFINITY,
    };
  }

  /** Where the readings themselves stop, as `findRails` tells it from all of them. */
  rails(): Rails {
    const most = RAIL_SHARE * this.readings;
    const fine = this.sensor.isFine();
    return {
      low: fine && this.atLow > most ? this.low : Number.NEGATIVE_INFINITY,
      high: fine && this.atHigh > most ? this.high : Number.POSITIVE_INFINITY,
    };
  }
}
