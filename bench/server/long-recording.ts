/** A long recording as CSV bytes: self-tests in a row, with steps and noise like a real one; the same at every run. */

const PERIOD = 1200;
const SEALED_FROM = 150;
const SEALED_TO = 1000;
const DRAWN_TO = 260;

export function longRecording(samples: number): Uint8Array {
  let seed = 12345;
  const random = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const lines = ['time_s,tank_pressure_pa,purge_duty_pct,vent_closed,fuel_level_pct,engine_rpm'];
  for (let i = 0; i < samples; i++) {
    const phase = i % PERIOD;
    const isSealed = phase > SEALED_FROM && phase < SEALED_TO;
    const isDrawing = isSealed && phase < DRAWN_TO;
    const pressure = isSealed ? -2500 + phase + 40 * random() : 40 * random() - 20;
    lines.push(
      `${(i / 10).toFixed(1)},${Math.round(pressure)},${isDrawing ? 30 : 0},${isSealed ? 1 : 0},55.2,${Math.round(690 + 40 * random())}`,
    );
  }
  return Buffer.from(`${lines.join('\n')}\n`);
}
