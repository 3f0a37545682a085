import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guessDateOrder, parseClock, parseDateTime } from './parse-time.ts';

describe('parseClock', () => {
  it.each([
    ['09:15:03.250', 33303.25],
    ['9:15:03,250', 33303.25],
    ['15:03', 903],
    ['12:00:00 AM', 0],
    ['12:30:00 pm', 45000],
    ['1:00:00 PM', 46800],
    ['100:00:00', 360000],
  ])('reads %s as %d s', (text, seconds) => expect(parseClock(text)).toBeCloseTo(seconds, 9));
  it.each(['9', '9:60:00', '9:15:61', '13:00:00 pm', '1:2:3', 'noon', '1:23 am'])('refuses %s', (text) =>
    expect(parseClock(text)).toBeNaN(),
  );
});

describe('parseDateTime', () => {
  it('agrees with the calendar of the platform on any day and time', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1900-01-01'), max: new Date('2999-12-31'), noInvalidDate: true }),
        (date) => {
          const iso = date.toISOString();
          expect(parseDateTime(iso, 'year-first')).toBeCloseTo(date.getTime() / 1000, 3);
          const [year, month, day] = iso.slice(0, 10).split('-');
          const clock = iso.slice(11, 23);
          expect(parseDateTime(`${day}.${month}.${year} ${clock}`, 'day-first')).toBeCloseTo(date.getTime() / 1000, 3);
          expect(parseDateTime(`${month}/${day}/${year} ${clock}`, 'month-first')).toBeCloseTo(
            date.getTime() / 1000,
            3,
          );
        },
      ),
    );
  });
  it('takes the zone off', () => {
    expect(parseDateTime('2024-03-05T10:00:00+01:30', 'year-first')).toBe(Date.UTC(2024, 2, 5, 8, 30) / 1000);
    expect(parseDateTime('2024-03-05T10:00:00-0500', 'year-first')).toBe(Date.UTC(2024, 2, 5, 15) / 1000);
  });
  it.each(['2024-02-30 10:00:00', '2023-02-29 10:00:00', '2024-13-01 10:00:00', '10:00:00', '2024-03-05'])(
    'refuses %s',
    (text) => expect(parseDateTime(text, 'year-first')).toBeNaN(),
  );
});

describe('guessDateOrder', () => {
  it('decides by numbers above 12 and says when there is none', () => {
    expect(guessDateOrder(['05/03/2024', '25/03/2024'])).toMatchObject({ order: 'day-first', ambiguous: false });
    expect(guessDateOrder(['03/05/2024', '03/25/2024'])).toMatchObject({ order: 'month-first', ambiguous: false });
    expect(guessDateOrder(['2024-03-05'])).toMatchObject({ order: 'year-first', ambiguous: false });
    expect(guessDateOrder(['03/05/2024'])).toMatchObject({ ambiguous: true });
    expect(guessDateOrder(['12:00'])).toBeUndefined();
  });
});
