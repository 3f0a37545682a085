import { describe, expect, it } from 'vitest';
import { typicalConditions } from './conditions.ts';
import { parseForecast, temperatureAt } from './forecast.ts';
import { clockInWords, dateInWords, momentOf, momentsOf, wallTime } from './local-time.ts';
import { type PlanOptions, planDrives } from './plan.ts';

const BERLIN = 'Europe/Berlin';
const HOUR_MS = 3_600_000;
const at = (iso: string): number => Date.parse(iso);

describe('wall-clock times (IANA zones; Central European summer time begins on 2026-03-29, ends on 2026-10-25)', () => {
  it('an hour that comes twice is two moments, one that is left out is none', () => {
    const twice = momentsOf({ year: 2026, month: 10, day: 25, hour: 2, minute: 30 }, BERLIN);
    expect(twice).toEqual([at('2026-10-25T00:30:00Z'), at('2026-10-25T01:30:00Z')]);
    expect(momentsOf({ year: 2026, month: 3, day: 29, hour: 2, minute: 30 }, BERLIN)).toEqual([]);
    expect(momentOf({ year: 2026, month: 3, day: 29, hour: 2, minute: 30 }, BERLIN)).toBe(at('2026-03-29T01:30:00Z'));
  });
  it('every other hour of the year comes back as it was', () => {
    for (let ms = at('2026-01-01T00:00:00Z'); ms < at('2027-01-01T00:00:00Z'); ms += 7 * HOUR_MS)
      for (const zone of [BERLIN, 'America/Los_Angeles', 'Australia/Lord_Howe', 'Asia/Kolkata'])
        expect(momentsOf(wallTime(ms, zone), zone)).toContain(ms);
  });
});

describe('pasted forecasts', () => {
  it('reads hours over midnight without dates, with and without units', () => {
    const now = at('2026-11-25T20:10:00Z');
    const { hours, problems } = parseForecast(
      'Hour  Temp\n22:00 4.5\n23:00 4\n0:00 3,5 °C\n1 am, 37.4 F\n',
      now,
      BERLIN,
    );
    expect(problems).toEqual([]);
    expect(hours.map(({ momentMs }) => new Date(momentMs).toISOString().slice(0, 13))).toEqual([
      '2026-11-25T21',
      '2026-11-25T22',
      '2026-11-25T23',
      '2026-11-26T00',
    ]);
    expect(hours.map(({ temperatureK }) => Number((temperatureK - 273.15).toFixed(2)))).toEqual([4.5, 4, 3.5, 3]);
  });
  it('takes the hour that stands twice at the end of summer time as two, and the gap at its beginning', () => {
    const autumn = parseForecast('1:00 9\n2:00 8\n2:00 7\n3:00 6', at('2026-10-24T22:30:00Z'), BERLIN);
    expect(autumn.problems).toEqual([]);
    expect(autumn.hours.map(({ momentMs }) => (momentMs - autumn.hours[0]!.momentMs) / HOUR_MS)).toEqual([0, 1, 2, 3]);
    const spring = parseForecast('1:00 9\n3:00 8\n4:00 7', at('2026-03-28T23:30:00Z'), BERLIN);
    expect(spring.hours.map(({ momentMs }) => (momentMs - spring.hours[0]!.momentMs) / HOUR_MS)).toEqual([0, 1, 2]);
  });
  it('says what is wrong and where', () => {
    const { problems } = parseForecast('06:00 4\n07:00 rain\n25:00 3\n08:00 400', at('2026-11-25T04:00:00Z'), 'UTC');
    expect(problems.map(({ line }) => line)).toEqual([2, 3, 4]);
  });
  it('says nothing beyond its hours', () => {
    const { hours } = parseForecast('06:00 4\n07:00 6', at('2026-11-25T05:30:00Z'), 'UTC');
    expect(temperatureAt(hours, at('2026-11-25T06:30:00Z'))! - 273.15).toBeCloseTo(5, 9);
    expect(temperatureAt(hours, at('2026-11-25T12:00:00Z'))).toBeUndefined();
  });
});

/** Days that are alike: coldest at five, warmest at fifteen. */
function forecast(fromMs: number, days: number, meanC: number) {
  return Array.from({ length: days * 24 }, (_, h) => ({
    momentMs: fromMs + h * HOUR_MS,
    temperatureK: 273.15 + meanC + 5 * Math.cos((2 * Math.PI * (((fromMs / HOUR_MS + h) % 24) - 15)) / 24),
  }));
}
const START = at('2026-10-20T16:00:00Z');
const options = (more: Partial<PlanOptions> = {}): PlanOptions => ({
  nowMs: START,
  zone: BERLIN,
  forecast: forecast(START, 9, 14),
  conditions: typicalConditions('engine-vacuum'),
  fuelLevel: 0.5,
  routine: [{ hour: 7, minute: 30, lengthS: 2400 }],
  ...more,
});

describe('drive plan', () => {
  it('keeps the soak between attempts, over the end of summer time too, in hours that passed and not on the clock', () => {
    const { attempts } = planDrives(options());
    expect(attempts.length).toBeGreaterThan(5);
    for (const { parkedBeforeS } of attempts) expect(parkedBeforeS).toBeGreaterThanOrEqual(8 * 3600);
    expect(new Set(attempts.map(({ date }) => date)).size).toBe(attempts.length);
    expect(attempts.some(({ date }) => date === '2026-10-25')).toBe(true);
    for (const { startMs, date, clock } of attempts) {
      expect(dateInWords(wallTime(startMs, BERLIN))).toBe(date);
      expect(clockInWords(wallTime(startMs, BERLIN))).toBe(clock);
    }
  });
  it('rises with every attempt and stays a probability', () => {
    const { attempts, probability } = planDrives(options());
    let before = 0;
    for (const { cumulative } of attempts) {
      expect(cumulative).toBeGreaterThan(before);
      before = cumulative;
    }
    expect(probability).toBe(before);
    expect(probability).toBeLessThan(1);
  });
  it('starts when it is warm enough where only noon is', () => {
    const cold = planDrives(options({ forecast: forecast(START, 5, 2), deadlineMs: START + 4 * 24 * HOUR_MS }));
    for (const { startMs } of cold.attempts) {
      const { hour } = wallTime(startMs, 'UTC');
      expect(hour).toBeGreaterThanOrEqual(10);
      expect(hour).toBeLessThanOrEqual(18);
    }
    expect(cold.remarks).toContainEqual(expect.objectContaining({ kind: 'by-inspection', days: 4 }));
  });
  it('counts the days to the inspection from date to date, late in the evening and over the end of summer time too', () => {
    for (const [now, deadline, days] of [
      ['2026-10-20T21:30:00Z', '2026-10-21T22:00:00Z', 2],
      ['2026-10-23T22:30:00Z', '2026-10-28T23:00:00Z', 5],
      ['2026-10-20T06:00:00Z', '2026-10-23T15:00:00Z', 3],
    ] as const) {
      const nowMs = at(now);
      const { remarks } = planDrives(options({ nowMs, forecast: forecast(nowMs, 9, 14), deadlineMs: at(deadline) }));
      expect(remarks).toContainEqual(expect.objectContaining({ kind: 'by-inspection', days }));
    }
  });
  it('says that nothing will do in a hard frost, and warns of a warm garage and a full tank', () => {
    const frost = planDrives(options({ forecast: forecast(START, 5, -20) }));
    expect(frost.attempts).toEqual([]);
    expect(frost.remarks[0]).toEqual({ kind: 'no-start' });
    const garage = planDrives(options({ forecast: forecast(START, 5, 6), garageK: 293 }));
    expect(garage.avoid).toContainEqual({ kind: 'heated-garage' });
    expect(garage.probability).toBeLessThan(planDrives(options({ forecast: forecast(START, 5, 6) })).probability + 0.2);
    expect(planDrives(options({ fuelLevel: 0.95 })).remarks[0]).toMatchObject({ kind: 'level-above', level: 0.95 });
  });
  it('leaves room for the time parked after the drive before the inspection', () => {
    const deadlineMs = START + 26 * HOUR_MS;
    const { attempts } = planDrives(options({ conditions: typicalConditions('pump-reference'), deadlineMs }));
    for (const { startMs } of attempts) expect(startMs + 5 * HOUR_MS).toBeLessThan(deadlineMs);
  });

  const parkedAfter = typicalConditions('engine-off');
  const commuter = (minuteHome: number): PlanOptions =>
    options({
      conditions: parkedAfter,
      routine: [
        { hour: 7, minute: 0, lengthS: 1800 },
        { hour: 7, minute: minuteHome, lengthS: 1800 },
        { hour: 17, minute: 0, lengthS: 1800 },
      ],
    });
  it('keeps the owner’s own drives: none breaks the time parked before or after a planned one', () => {
    const plan = planDrives(options({ routine: [{ hour: 12, minute: 0, lengthS: 1800 }] }));
    expect(plan.attempts.length).toBeGreaterThan(3);
    for (const { startMs } of plan.attempts) {
      const { hour, minute } = wallTime(startMs, BERLIN);
      // Eight hours after 12:30 is half past eight in the evening.
      expect(hour * 60 + minute <= 12 * 60 || hour * 60 + minute >= 20 * 60 + 30).toBe(true);
    }
    for (const { stopMs, parkedAfterS } of planDrives(commuter(50)).attempts) {
      const until = wallTime(stopMs + parkedAfterS * 1000, BERLIN);
      const stop = wallTime(stopMs, BERLIN);
      expect(stop.hour < 17 && until.hour >= 17).toBe(false);
    }
  });
  it('of starts with nearly the same chance it takes the drive that is made anyway, else no odd hour', () => {
    const even = Array.from({ length: 72 }, (_, h) => ({ momentMs: START + h * HOUR_MS, temperatureK: 290 }));
    const [own] = planDrives(options({ forecast: even })).attempts;
    expect(own?.clock).toBe('07:30');
    for (const { clock } of planDrives(options({ forecast: even, routine: [] })).attempts)
      expect(clock >= '07:00' && clock <= '20:00').toBe(true);
  });
  it('says that the usual drives are in the way where they are', () => {
    const busy = planDrives(
      options({ routine: [1, 5, 9, 13, 17, 21].map((hour) => ({ hour, minute: 0, lengthS: 1200 })) }),
    );
    expect(busy.remarks).toContainEqual(expect.objectContaining({ kind: 'routine-in-the-way' }));
  });
  it('does not give up on an inspection that lies beyond the forecast', () => {
    const short = { forecast: forecast(START, 1, 14) };
    const later = planDrives(options({ ...short, deadlineMs: START + 9 * 24 * HOUR_MS }));
    expect(later.remarks.map(({ kind }) => kind)).toContain('forecast-ends');
    const now = planDrives(options({ ...short, deadlineMs: START + 24 * HOUR_MS }));
    expect(now.remarks.map(({ kind }) => kind)).toContain('not-enough');
  });
});
