import { describe, expect, it } from 'vitest';
import { CaptureReader, type CaptureReading, looksLikeCapture } from '../../src/recording/bus/read-capture.ts';
import { vinCheckDigitAgrees } from '../../src/recording/bus/vehicle-information.ts';
import { decideWideGauge, widePressurePa } from '../../src/recording/bus/wide-gauge.ts';

function read(text: string, more: object = {}): CaptureReading {
  const reader = new CaptureReader({ fileName: 'made.log', ...more });
  reader.push(new TextEncoder().encode(text));
  return reader.finish();
}
const times = ({ recording }: CaptureReading): number[] =>
  [...(recording?.timeS ?? [])].map((t) => Math.round(t * 1e6) / 1e6);

describe('forms of candump text', () => {
  const consoleLine = (stamp: string, pressure: string) =>
    ` ${stamp}  can0  7E8   [8]  04 41 32 ${pressure} 00 00 00\n`;

  it('log form, with direction letters and Windows line ends', () => {
    const reading = read(
      '(1700000000.000000) can0 7E8#044132FE0C000000 R\r\n(1700000000.500000) can0 7E8#044132FF0C000000\r\n',
    );
    expect(times(reading)).toEqual([0, 0.5]);
    expect([...reading.recording!.channels.tankPressureGaugePa!]).toEqual([-125, -61]);
    expect(reading.report.stamps).toBe('since-1970');
    expect(reading.report.firstTimeS).toBe(1_700_000_000);
  });
  it('console form: since 1970, since the start, since the frame before, with date, without stamps', () => {
    const form = (stamps: readonly string[]) => read(stamps.map((stamp, i) => consoleLine(stamp, `FE 0${i}`)).join(''));
    expect(times(form(['(1700000000.000000)', '(1700000001.000000)', '(1700000003.000000)']))).toEqual([0, 1, 3]);
    const zero = form(['(000.000000)', '(001.000000)', '(003.000000)']);
    expect([zero.report.stamps, times(zero)]).toEqual(['since-start', [0, 1, 3]]);
    const delta = form(['(000.000000)', '(001.000000)', '(000.500000)', '(002.000000)']);
    expect([delta.report.stamps, times(delta)]).toEqual(['since-last-frame', [0, 1, 1.5, 3.5]]);
    const date = form(['(2026-12-31 23:59:59.500000)', '(2027-01-01 00:00:00.250000)']);
    expect([date.report.stamps, times(date)]).toEqual(['local-date', [0, 0.75]]);
    const none = form(['', '']);
    expect(none.recording).toBeUndefined();
    expect(none.report.warnings.join()).toMatch(/no time stamps/);
  });
  it('stamps since the frame before are added up over all frames, those of others too', () => {
    const text = [
      ' (000.000000)  can0  123   [1]  00',
      ' (001.000000)  can0  7E8   [8]  04 41 32 FE 0C 00 00 00',
      ' (000.250000)  can0  123   [1]  00',
      ' (000.250000)  can0  7E8   [8]  04 41 32 FE 0D 00 00 00',
      ' (000.100000)  can0  123   [1]  00',
    ].join('\n');
    expect(times(read(text))).toEqual([0, 0.5]);
  });
  it('directions, ASCII behind the data, remote and error frames', () => {
    const text = [
      " (000.000000)  can0  RX - -  7E8   [8]  04 41 32 FE 0C 00 00 00   '.A2.....'",
      ' (000.100000)  can0  TX B -  7E0   [8]  02 01 32 00 00 00 00 00',
      ' (000.200000)  can0  7E8   [8]  remote request',
      ' (000.300000)  can0  20000080   [8]  00 00 00 00 00 00 00 00   ERRORFRAME',
      ' (000.400000)  can0  7E8   [8]  04 41 32 FE 0D 00 00 00',
    ].join('\n');
    const { report } = read(text);
    expect(report.frames).toBe(3);
    expect(Object.fromEntries(report.skipped.map(({ reason, count }) => [reason, count]))).toEqual({
      remote: 1,
      'error-frame': 1,
    });
  });
  it('a local clock that is put back an hour goes on', () => {
    const reading = read(
      consoleLine('(2026-10-25 02:59:59.000000)', 'FE 0C') + consoleLine('(2026-10-25 02:00:01.000000)', 'FE 0D'),
    );
    expect(times(reading)).toEqual([0, 2]);
    expect(reading.report.warnings.join()).toMatch(/put back an hour/);
  });
  it('damaged lines are counted with their place', () => {
    const { report } = read(
      '(1700000000.000000) can0 7E8#044132FE0C000000\n(1700000000.1) can0 7E8#0441\nhello\n(17x) can0 7E8#04\n',
    );
    const byReason = Object.fromEntries(report.skipped.map(({ reason, firstLines }) => [reason, firstLines]));
    expect(byReason).toEqual({ 'no-frame': [3], 'bad-stamp': [4] });
  });
  it('is told from a CSV', () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    expect(looksLikeCapture(bytes('(1700000000.000000) can0 123#00\n'))).toBe(true);
    expect(looksLikeCapture(bytes('  can0  7E8   [3]  01 02 03'))).toBe(true);
    expect(looksLikeCapture(bytes('time_s,tank_pressure_pa\n0,1\n0.1,2\n'))).toBe(false);
    expect(looksLikeCapture(bytes(''))).toBe(false);
  });
});

describe('item $54: two readings (trap 2; both stand in public tables)', () => {
  it('0000 is 0 or -32767 Pa, F830 is -2000 or +30769 Pa', () => {
    expect([widePressurePa(0, 'twos-complement'), widePressurePa(0, 'offset')]).toEqual([0, -32_767]);
    expect([widePressurePa(0xf830, 'twos-complement'), widePressurePa(0xf830, 'offset')]).toEqual([-2000, 30_769]);
  });
  it('the value at key-on decides, and the decision is said', () => {
    const plain = read('(1.000000) can0 7E8#0441540003000000\n(2.000000) can0 7E8#044154F830000000\n');
    expect([...plain.recording!.channels.tankPressureGaugePa!]).toEqual([3, -2000]);
    expect(plain.wideGauge).toMatchObject({ reading: 'twos-complement', how: 'key-on' });
    const offset = read('(1.000000) can0 7E8#0441548002000000\n(2.000000) can0 7E8#0441547800000000\n');
    expect([...offset.recording!.channels.tankPressureGaugePa!]).toEqual([3, -2047]);
    expect(offset.wideGauge?.reading).toBe('offset');
    expect(offset.report.warnings.join()).toMatch(/item \$54/);
  });
  it('another pressure of the car, or a person, says more than key-on', () => {
    expect(decideWideGauge(0x4000, 16_300, undefined).how).toBe('other-item');
    expect(decideWideGauge(0x4000, undefined, undefined).how).toBe('assumed');
    expect(decideWideGauge(0x4000, undefined, 'offset')).toMatchObject({ reading: 'offset', how: 'given' });
  });
});

describe('vehicle identification number', () => {
  it('check digit of the worked example 1M8GDM9AXKP042788 (49 CFR 565.15, from memory)', () => {
    expect(vinCheckDigitAgrees('1M8GDM9AXKP042788')).toBe(true);
    expect(vinCheckDigitAgrees('1M8GDM9A1KP042788')).toBe(false);
  });
});
