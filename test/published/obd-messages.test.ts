import { describe, expect, it } from 'vitest';
import { CaptureReader, type CaptureReading } from '../../src/recording/bus/read-capture.ts';

/** Reads frames given as in a candump log, one millisecond apart. */
function read(...frames: readonly string[]): CaptureReading {
  const reader = new CaptureReader({ fileName: 'frames' });
  frames.forEach((frame, i) => {
    reader.push(new TextEncoder().encode(`(1700000000.${String(i * 1000).padStart(6, '0')}) can0 ${frame}\n`));
  });
  return reader.finish();
}

/** Last value of a data item of service $01, through the whole chain from text; two samples make a recording. */
function channelValue(frame: string, channel: string, ...also: readonly string[]): number {
  const { recording } = read(frame, ...also, frame);
  const values = (recording!.channels as Record<string, Float64Array>)[channel];
  return values![values!.length - 1]!;
}

const single = (...bytes: readonly string[]): string => {
  const data = bytes.flatMap((text) => text.split(' '));
  return `7E8#0${data.length}${data.join('')}`.padEnd(20, '0');
};

describe('service $01 scaling (Wireshark packet-obd-ii.c commit 15f22dac, confirmed; SI by exact factors)', () => {
  for (const [bytes, channel, expected, what] of [
    ['05 3C', 'coolantTemperatureK', 293.15, '20 degC'],
    ['0F 3C', 'intakeTemperatureK', 293.15, '20 degC'],
    ['46 3C', 'ambientTemperatureK', 293.15, '20 degC'],
    ['06 7D', 'shortTrim', -0.02344, '-2.344 %'],
    ['06 83', 'shortTrim', 0.02344, '+2.344 %'],
    ['07 83', 'longTrim', 0.02344, '+2.344 %'],
    ['0B 65', 'manifoldAbsPa', 101e3, '101 kPa'],
    ['33 65', 'barometricPa', 101e3, '101 kPa'],
    ['0C 0B B8', 'engineSpeedRpm', 750, '750 rpm'],
    ['0D 28', 'vehicleSpeedMPerS', 11.1111, '40 km/h'],
    ['2E 26', 'purgeDuty', 0.14902, '14.902 %'],
    ['2F 26', 'fuelLevel', 0.14902, '14.902 %'],
    ['2F 27', 'fuelLevel', 0.15294, '15.294 %, K'],
    ['2F D8', 'fuelLevel', 0.84706, '84.706 %, K'],
    ['2F D9', 'fuelLevel', 0.85098, '85.098 %, K'],
    ['32 FE 0C', 'tankPressureGaugePa', -125, '-125 Pa; unit Pa from memory'],
    ['32 F8 C0', 'tankPressureGaugePa', -464, '-464 Pa'],
    ['32 FF FF', 'tankPressureGaugePa', -0.25, '-0.25 Pa'],
    ['32 20 00', 'tankPressureGaugePa', 2048, '+2048 Pa'],
  ] as const)
    it(`${bytes} is ${what}`, () => {
      const value = channelValue(single('41', bytes), channel);
      expect(Math.abs(value - expected)).toBeLessThan(6e-6 * Math.max(1, Math.abs(expected)));
    });

  it('item $53 is absolute: 99.76 and 100.00 kPa less the barometer of 101 kPa of item $33 (confirmed; trap 3)', () => {
    const barometer = single('41 33 65');
    expect(channelValue(single('41 53 4D F0'), 'tankPressureGaugePa', barometer)).toBeCloseTo(-1240, 6);
    expect(channelValue(single('41 53 4E 20'), 'tankPressureGaugePa', barometer)).toBeCloseTo(-1000, 6);
    expect(read(single('41 53 4E 20'), single('41 53 4E 20')).recording).toBeUndefined();
    expect(read(single('41 53 4E 20')).report.warnings.join()).toMatch(/barometric pressure/);
  });

  for (const [bytes, name, expected] of [
    ['04 80', 'calculated load', 0.50196],
    ['10 01 F4', 'air mass flow', 5e-3],
    ['11 80', 'throttle', 0.50196],
    ['1F 02 58', 'run time since start', 600],
    ['3C 11 F8', 'catalyst temperature, bank 1, sensor 1', 693.15],
    ['42 35 20', 'module voltage', 13.6],
    ['44 80 00', 'commanded air-fuel equivalence ratio', 1],
    ['03 02 00', 'fuel system status', 0x0200],
  ] as const)
    it(`${bytes}: ${name} is ${expected} in SI`, () => {
      // Items without a channel are shown in a freeze frame, which has the scaling of service $01.
      const [item, ...data] = bytes.split(' ');
      const { freezeFrames } = read(single('42', item!, '00', ...data));
      expect(freezeFrames[0]?.items[0]?.name).toBe(name);
      expect(Math.abs(freezeFrames[0]!.items[0]!.value - expected)).toBeLessThan(6e-6 * Math.max(1, expected));
    });

  it('counts since clear: 50 km ($31), 15 warm-ups ($30), 120 min ($4E), lamp 120 min ($4D), 50 km ($21)', () => {
    const { status } = read(
      single('41 31 00 32'),
      single('41 30 0F'),
      single('41 4E 00 78'),
      single('41 4D 00 78'),
      single('41 21 00 32'),
    );
    expect(status).toMatchObject({
      distanceSinceClearM: 50_000,
      warmUpsSinceClear: 15,
      timeSinceClearS: 7200,
      timeWithLampS: 7200,
      distanceWithLampM: 50_000,
    });
  });
});

describe('example frames (K, from the layouts of SAE J1979)', () => {
  it('82 07 65 04: lamp on, 2 codes, evaporative system supported and not complete, the rest complete (from memory)', () => {
    const { status } = read('7DF#0201010000000000', '7E8#0641018207650400');
    expect(status.sinceClear).toMatchObject({ lampOn: true, codeCount: 2, ignition: 'spark' });
    const supported = status.sinceClear!.monitors.filter((m) => m.supported).map((m) => m.name);
    expect(supported).toEqual([
      'misfire',
      'fuel system',
      'components',
      'catalyst',
      'evaporative system',
      'oxygen sensor',
      'oxygen sensor heater',
    ]);
    expect(status.sinceClear!.monitors.filter((m) => m.supported && !m.complete).map((m) => m.name)).toEqual([
      'evaporative system',
    ]);
  });

  it('item $41 is this drive cycle, not the readiness for an inspection (trap 4)', () => {
    const { status } = read('7E8#0641010007650000', '7E8#0641410007650400');
    expect(status.sinceClear!.monitors.every((m) => m.complete)).toBe(true);
    expect(status.thisDrive!.monitors.some((m) => m.supported && !m.complete)).toBe(true);
    expect(status.thisDrive!.lampOn).toBeUndefined();
  });

  it('tank pressures of -125 Pa, 99.76 kPa absolute and -2000 Pa (item $54 from memory)', () => {
    expect(channelValue('7E8#044132FE0C000000', 'tankPressureGaugePa')).toBe(-125);
    expect(channelValue('7E8#0441534DF0000000', 'tankPressureGaugePa', '7E8#0341336500000000')).toBeCloseTo(-1240, 9);
    expect(channelValue('7E8#044154F830000000', 'tankPressureGaugePa')).toBe(-2000);
    expect(channelValue(single('41 54 0B B8'), 'tankPressureGaugePa')).toBe(3000);
  });

  it('purge 14.90 %, level 85.10 %', () => {
    expect(channelValue('7E8#03412E2600000000', 'purgeDuty')).toBeCloseTo(0.149, 3);
    expect(channelValue('7E8#03412FD900000000', 'fuelLevel')).toBeCloseTo(0.851, 4);
  });

  it('codes: P0442 and P0456 confirmed, none, permanent P0455', () => {
    expect(read('7E8#0643020442045600').codes).toEqual([
      { code: 'P0442', status: 'confirmed', unit: '7E8' },
      { code: 'P0456', status: 'confirmed', unit: '7E8' },
    ]);
    const none = read('7E8#0243000000000000');
    expect(none.codes).toEqual([]);
    expect(none.units[0]?.transport.messages).toBe(1);
    expect(read('7E8#044A010455000000').codes).toEqual([{ code: 'P0455', status: 'permanent', unit: '7E8' }]);
    expect(read('7E8#0447010442000000').codes).toEqual([{ code: 'P0442', status: 'pending', unit: '7E8' }]);
    expect(read('7E8#064302C100242100').codes.map(({ code }) => code)).toEqual(['U0100', 'P2421']);
  });

  it('$06 $3C: -12.5 Pa within -50 to 0 Pa passes after signed scaling (K; layout and scaling from memory)', () => {
    const { results } = read('7E8#100A463C81FEFFCE', '7E0#3000000000000000', '7E8#21FF380000000000');
    expect(results).toHaveLength(1);
    expect(results[0]).toMatchObject({
      monitorId: 0x3c,
      testId: 0x81,
      unit: 'Pa',
      value: -12.5,
      lowest: -50,
      passed: true,
    });
    expect(Math.abs(results[0]!.highest)).toBe(0);
    expect(results[0]!.monitor).toMatch(/0\.020 in/);
  });

  it('negative response to a physical request: out of range', () => {
    expect(read('7E8#037F013100000000').units[0]!.negatives).toEqual([
      { service: 1, reason: 'request out of range', count: 1 },
    ]);
  });
});

describe('unit-and-scaling of service $06 (SAE J1979, from memory)', () => {
  const result = (scaling: string, word: string) => {
    const { results } = read(`7E8#100A463C81${scaling}${word}`, '7E8#2100007FFF000000');
    return results[0]!;
  };
  for (const [scaling, word, expected, unit] of [
    ['03', '0064', 1, '1'],
    ['04', '0064', 0.1, '1'],
    ['0A', '2000', 0.999424, 'V'],
    ['0B', '03E8', 1, 'V'],
    ['10', '03E8', 1, 's'],
    ['12', '003C', 60, 's'],
    ['17', '0064', 1000, 'Pa'],
    ['18', '0064', 1170, 'Pa'],
    ['19', '0064', 7900, 'Pa'],
    ['1A', '0064', 100e3, 'Pa'],
    ['24', 'FFFF', 65535, 'counts'],
    ['27', '0064', 1e-3, 'kg/s'],
    ['28', '0002', 2e-3, 'kg/s'],
    ['29', '0004', 1, 'Pa/s'],
    ['2F', '2710', 1, '1'],
    ['81', 'FFFF', -1, 'raw'],
    ['84', 'FC18', -1, '1'],
    ['8B', 'FC18', -1, 'V'],
    ['A8', 'FFFE', -2e-3, 'kg/s'],
    ['A9', 'FFFC', -1, 'Pa/s'],
    ['FD', 'FC18', -1000, 'Pa'],
    ['FE', 'FF38', -50, 'Pa'],
  ] as const)
    it(`$${scaling}: ${word} is ${expected} ${unit}`, () => {
      expect(result(scaling, word).value).toBeCloseTo(expected, 9);
      expect(result(scaling, word).unit).toBe(unit);
    });
});

describe('in-use counters, service $09 type $08 (SAE J1979, from memory)', () => {
  /** `49 08 count pairs` as frames of ISO 15765-2. */
  const frames = (counters: readonly number[]): string[] => {
    const bytes = [0x49, 0x08, counters.length, ...counters.flatMap((n) => [n >> 8, n & 255])];
    const hex = bytes.map((b) => b.toString(16).padStart(2, '0'));
    const out = [`7E8#1${bytes.length.toString(16).padStart(3, '0')}${hex.slice(0, 6).join('')}`];
    for (let at = 6, k = 1; at < hex.length; at += 7, k++)
      out.push(`7E8#2${(k % 16).toString(16)}${hex.slice(at, at + 7).join('')}`.padEnd(20, 'A'));
    return out;
  };
  const twenty = Array.from({ length: 20 }, (_, i) => (i === 14 ? 16 : i === 15 ? 50 : 1000 + i));

  it('with 20 items the message has 43 bytes, and EVAPCOMP and EVAPCOND are the 15th and 16th', () => {
    const sent = frames(twenty);
    expect(sent[0]!.slice(4, 14).toUpperCase()).toBe('102B490814');
    const { inUse } = read(...sent).status;
    expect(inUse).toMatchObject({ EVAPCOMP: 16, EVAPCOND: 50, OBDCOND: 1000, IGNCNTR: 1001 });
  });

  it('with 16 items nothing behind EVAPCOND is made up', () => {
    const { inUse } = read(...frames(twenty.slice(0, 16))).status;
    expect(inUse?.EVAPCOND).toBe(50);
    expect(inUse).not.toHaveProperty('SO2SCOMP1');
  });
});

describe('transport, ISO 15765-2 and -4', () => {
  it('29-bit identifiers: 18DB33F1 asks all, 18DAF110 replies (confirmed)', () => {
    const { units, codes } = read('18DB33F1#0103000000000000', '18DAF110#0443010442000000');
    expect(units[0]?.unit).toBe('18DAF110');
    expect(units[0]?.replyTimes?.count).toBe(1);
    expect(codes[0]?.code).toBe('P0442');
  });

  it('the sequence counts from 1 and wraps from F to 0 (open implementations)', () => {
    const counters = Array.from({ length: 60 }, (_, i) => i);
    const bytes = [0x49, 0x08, 60, ...counters.flatMap((n) => [n >> 8, n & 255])];
    const hex = bytes.map((b) => b.toString(16).padStart(2, '0'));
    const out = [`7E8#1${bytes.length.toString(16).padStart(3, '0')}${hex.slice(0, 6).join('')}`];
    for (let at = 6, k = 1; at < hex.length; at += 7, k++)
      out.push(`7E8#2${(k % 16).toString(16)}${hex.slice(at, at + 7).join('')}`.padEnd(20, '0'));
    expect(out.some((frame) => frame.startsWith('7E8#20'))).toBe(true);
    expect(read(...out).status.inUse?.EVAPCOND).toBe(15);
  });
});
