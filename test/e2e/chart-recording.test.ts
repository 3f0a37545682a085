import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { EXAMPLE, refusalOf, refuseUpload } from './chart-answers.ts';
import { eventually, type OpenChart, openChart, wordsOf } from './chart-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const surface = (page: Page) => page.locator('.recording .u-over');

async function withChart(run: (chart: OpenChart) => Promise<void>, view = {}): Promise<void> {
  const chart = await openChart(browser, { ...view, areWorkersSilent: true });
  try {
    await chart.page.locator('.recording .lane-chart canvas').waitFor();
    // The chart is higher than the window, and what came late above it may have carried its upper end out of sight.
    await surface(chart.page).evaluate((chart) =>
      scrollBy({ top: chart.getBoundingClientRect().top - 200, behavior: 'instant' }),
    );
    await run(chart);
  } finally {
    await chart.close();
  }
}

const cursorWords = (page: Page): Promise<string> => wordsOf(page.locator('.recording .cursor-row output'));
const valueAt = (page: Page, channel: string): Promise<string> =>
  wordsOf(page.locator('.recording .cursor-values tr', { hasText: channel }).locator('td'));
/** Where a boundary stands within the chart, CSS pixels from the left of the plot. */
const gripAt = async (page: Page, name: string): Promise<number> => {
  const grip = await page.getByRole('slider', { name }).boundingBox();
  const plot = await surface(page).boundingBox();
  if (grip === null || plot === null) throw new Error('not drawn');
  return grip.x + grip.width / 2 - plot.x;
};
const HOLD_END = 'Boundary between hold and release';

describe('chart of a recording', () => {
  test('says at the cursor what the file says', () =>
    withChart(async ({ page }) => {
      // A line in the middle of the hold, read from the file itself.
      const cells = EXAMPLE.split(/\r?\n/)[601]!.split(',').map(Number);
      const head = EXAMPLE.split(/\r?\n/)[0]!.split(',');
      const time = cells[head.indexOf('time_s')]!;
      const pascal = cells[head.indexOf('tank_pressure_pa')]!;
      const box = (await surface(page).boundingBox())!;
      const last = Number(EXAMPLE.trim().split(/\r?\n/).at(-1)!.split(',')[0]);
      await page.mouse.move(box.x + (box.width * time) / last, box.y + 40);
      const words = await eventually(
        () => cursorWords(page),
        (text) => Math.abs(Number.parseFloat(text) - time) < 0.4,
      );
      const shown = Number((await valueAt(page, 'tank pressure')).replace('\u2212', '-').replace(/[^\d.-]/g, ''));
      // The pointer is good to a pixel, about 0.2 s; the hold climbs some 30 Pa in that time, noise included.
      expect(Math.abs(shown * 1000 - pascal), words).toBeLessThan(60);
      expect(await valueAt(page, 'vent valve')).toBe('shut');
    }));

  test('is worked by keyboard alone', () =>
    withChart(async ({ page }) => {
      await surface(page).focus();
      const whole = await gripAt(page, HOLD_END);
      const before = await cursorWords(page);
      await page.keyboard.press('Shift+ArrowRight');
      const after = await eventually(
        () => cursorWords(page),
        (words) => words !== before,
      );
      expect(Number.parseFloat(after)).toBeGreaterThan(Number.parseFloat(before));
      await page.keyboard.press('+');
      // The boundary right of the middle runs out to the right when the view narrows about the cursor.
      await eventually(
        () => page.getByRole('slider', { name: HOLD_END }).count(),
        (count) => count === 0,
      );
      for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowRight');
      await eventually(
        () => page.getByRole('slider', { name: HOLD_END }).count(),
        (count) => count === 1,
      );
      await page.keyboard.press('0');
      await eventually(
        () => gripAt(page, HOLD_END),
        (x) => Math.abs(x - whole) < 1,
      );
    }));

  test('moves under the mouse, zooms at the pointer, and to a span', () =>
    withChart(async ({ page }) => {
      const box = (await surface(page).boundingBox())!;
      const whole = await gripAt(page, HOLD_END);
      const y = box.y + 60;
      // Zoom about the boundary: it stays under the pointer.
      await page.mouse.move(box.x + whole, y);
      await page.keyboard.down('Control');
      await page.mouse.wheel(0, -300);
      await page.keyboard.up('Control');
      await page.waitForTimeout(200);
      expect(Math.abs((await gripAt(page, HOLD_END)) - whole)).toBeLessThan(2);
      // A drag to the right by 120 px carries it along.
      await page.mouse.move(box.x + 100, y);
      await page.mouse.down();
      await page.mouse.move(box.x + 60, y, { steps: 4 });
      await page.mouse.up();
      await eventually(
        () => gripAt(page, HOLD_END),
        (x) => Math.abs(x - (whole - 40)) < 2,
      );
      await page.getByRole('button', { name: 'Everything' }).first().click();
      // The page may have scrolled to the button.
      const moved = (await surface(page).boundingBox())!;
      const level = moved.y + 60;
      // A span from 20 % to 95 % fills the chart: what stood at 95 % stands at its right end.
      await page.keyboard.down('Shift');
      await page.mouse.move(moved.x + 0.2 * moved.width, level);
      await page.mouse.down();
      await page.mouse.move(moved.x + 0.95 * moved.width, level, { steps: 4 });
      await page.mouse.up();
      await page.keyboard.up('Shift');
      const expected = ((whole / box.width - 0.2) / 0.75) * box.width;
      await eventually(
        () => gripAt(page, HOLD_END),
        (x) => Math.abs(x - expected) < 3,
      );
    }));

  test('two fingers zoom it', () =>
    withChart(
      async ({ page }) => {
        await surface(page).scrollIntoViewIfNeeded();
        const box = (await surface(page).boundingBox())!;
        const whole = await gripAt(page, HOLD_END);
        const touch = await page.context().newCDPSession(page);
        const y = Math.max(box.y + 40, 60);
        const points = (a: number, b: number) => [
          { x: box.x + a * box.width, y, id: 0 },
          { x: box.x + b * box.width, y, id: 1 },
        ];
        await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: points(0.4, 0.6) });
        await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(0.38, 0.64) });
        await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(0.35, 0.7) });
        await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
        // 0.4 has gone to 0.35 and 0.6 to 0.7: 1.75 times as wide.
        const expected = (0.35 + (whole / box.width - 0.4) * 1.75) * box.width;
        if (expected < box.width)
          await eventually(
            () => gripAt(page, HOLD_END),
            (x) => Math.abs(x - expected) < 6,
          );
        else
          await eventually(
            () => page.getByRole('slider', { name: HOLD_END }).count(),
            (count) => count === 0,
          );
      },
      { width: 390, hasTouch: true },
    ));
});

describe('phases', () => {
  test('a boundary moves by keyboard and by mouse, is saved, and goes back to what was found', () =>
    withChart(async ({ page, job }) => {
      const slider = page.getByRole('slider', { name: HOLD_END });
      const found = Number(await slider.getAttribute('aria-valuenow'));
      await slider.focus();
      await page.keyboard.press('Shift+ArrowLeft');
      const saved = await eventually(
        () => job().recordings[0]!.phases,
        (phases) => phases !== undefined,
      );
      const hold = saved!.find(({ kind }) => kind === 'hold')!;
      expect(hold.toS).toBeLessThan(found - 1);
      expect(saved!.find(({ kind }) => kind === 'release')!.fromS).toBe(hold.toS);

      const grip = (await slider.boundingBox())!;
      await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
      await page.mouse.down();
      await page.mouse.move(grip.x + grip.width / 2 - 80, grip.y + grip.height / 2, { steps: 5 });
      await page.mouse.up();
      await eventually(
        () => job().recordings[0]!.phases!.find(({ kind }) => kind === 'hold')!.toS,
        (toS) => toS < hold.toS - 5,
      );

      await page.locator('.recording summary', { hasText: 'Phases' }).click();
      await page.getByRole('button', { name: 'Back to the phases found' }).click();
      await eventually(
        () => job().recordings[0]!.phases,
        (phases) => phases === undefined,
      );
      await eventually(
        async () => Number(await slider.getAttribute('aria-valuenow')),
        (now) => now === found,
      );
    }));

  test('are parted, renamed and timed in the list', () =>
    withChart(async ({ page, job }) => {
      await page.locator('.recording summary', { hasText: 'Phases' }).click();
      await page.getByRole('button', { name: 'Part in two: hold' }).click();
      await eventually(
        () => job().recordings[0]!.phases?.filter(({ kind }) => kind === 'hold').length,
        (count) => count === 2,
      );
      await page.locator('.phase-list select').last().selectOption('rest');
      await eventually(
        () => job().recordings[0]!.phases!.at(-1)!.kind,
        (kind) => kind === 'rest',
      );
    }));
});

describe('how a file is read', () => {
  test('is shown on its first rows and corrected', () =>
    withChart(async ({ page, job }) => {
      await page.locator('.recording summary', { hasText: 'How the file is read' }).click();
      const rows = page.locator('.first-rows');
      expect(await wordsOf(rows)).toContain('tank_pressure_pa');
      expect(await wordsOf(rows)).toContain('tank pressure, Pa');
      await page.getByLabel('Unit of tank_pressure_pa').selectOption('hPa');
      await page.getByRole('button', { name: 'Read the file like this' }).click();
      const mapping = await eventually(
        () => job().recordings[0]!.mapping,
        (given) => given !== undefined,
      );
      const column = mapping!.columns.find((each) => each.column === 'tank_pressure_pa')!;
      expect(column).toEqual({
        column: 'tank_pressure_pa',
        channel: 'tankPressureGaugePa',
        unit: 'hPa',
        ...(column.reference === undefined ? {} : { reference: column.reference }),
      });
      // The samples are fetched anew: a hundred times the pressure.
      await eventually(
        async () => Math.abs(Number.parseFloat((await valueAt(page, 'tank pressure')).replace('\u2212', '-'))),
        (kPa) => kPa > 20,
      );
      await page.getByRole('button', { name: 'Back to the guess' }).click();
      await eventually(
        () => job().recordings[0]!.mapping,
        (given) => given === undefined,
      );
    }));

  test('a refused file says where and what, and can be sent again as told', () =>
    withChart(async ({ page }) => {
      // Nothing in it is known by name: the reader cannot find a channel.
      const text = `alpha,beta\n${Array.from({ length: 40 }, (_, k) => `${k},${k * 2}`).join('\n')}\n`;
      const refusal = refusalOf(text, 'unknown.csv');
      expect(refusal).toBeDefined();
      await refuseUpload(page, 422, refusal);
      await page
        .locator('.drop-place input[type=file]')
        .first()
        .setInputFiles({
          name: 'unknown.csv',
          mimeType: 'text/csv',
          buffer: Buffer.from(text),
        });
      const message = page.locator('.recordings .message.bad');
      await message.waitFor();
      const said = await wordsOf(message);
      expect(said).toContain('unknown.csv');
      expect(said).toContain(`line ${refusal!.error.line}`);
      expect(said).toContain(refusal!.error.expected!);
      expect(said).toContain(refusal!.error.advice!);
      await message.locator('summary', { hasText: 'Say how the file is to be read' }).click();
      await message.getByLabel('Time column', { exact: true }).selectOption('alpha');
      await message.getByLabel('What beta holds').selectOption('tankPressureGaugePa');
      const sent = page.waitForRequest(
        (request) => request.method() === 'POST' && request.url().endsWith('/recordings'),
      );
      await message.getByRole('button', { name: 'Take in with this reading' }).click();
      const body = (await sent).postDataBuffer()!.toString('utf8');
      expect(body).toContain('"channel":"tankPressureGaugePa"');
      await page.locator('.recording h3', { hasText: 'unknown.csv' }).waitFor();
    }));

  test.each([
    [413, 'too-large', /largest file taken in/],
    [415, 'not-a-recording', /Export the recording as CSV/],
  ])('a refusal with %i says what to do', (status, code, advice) =>
    withChart(async ({ page }) => {
      await refuseUpload(page, status, { error: { code, message: 'refused' } });
      await page
        .locator('.drop-place input[type=file]')
        .first()
        .setInputFiles({
          name: 'x.bin',
          mimeType: 'application/octet-stream',
          buffer: Buffer.from([1, 2, 3]),
        });
      const message = page.locator('.recordings .message.bad');
      await message.waitFor();
      expect(await wordsOf(message)).toMatch(advice);
      await message.getByRole('button', { name: 'Take this message away' }).click();
      expect(await message.count()).toBe(0);
    }),
  );

  test('an upload can be stopped', () =>
    withChart(async ({ page, job }) => {
      const before = job().recordings.length;
      await page.route('**/jobs/*/recordings', () => new Promise(() => {}), { times: 1 });
      await page
        .locator('.drop-place input[type=file]')
        .first()
        .setInputFiles({
          name: 'slow.csv',
          mimeType: 'text/csv',
          buffer: Buffer.from(EXAMPLE),
        });
      await page.getByRole('button', { name: 'Stop taking in slow.csv' }).click();
      await page.getByText('slow.csv: stopped, nothing was kept.').waitFor();
      expect(job().recordings.length).toBe(before);
    }));

  test('what it counts for is saved, and it can be removed', () =>
    withChart(async ({ page, job }) => {
      await page.getByLabel('Counts for the finding').first().click();
      await eventually(
        () => job().recordings[0]!.useInFinding,
        (use) => !use,
      );
      await page.locator('.recording').getByLabel('after the repair').check();
      await eventually(
        () => job().recordings[0]!.taken,
        (taken) => taken === 'after-repair',
      );
      await page.getByRole('button', { name: 'Remove Leak self-test' }).click();
      await page.getByRole('button', { name: 'Remove it' }).click();
      await eventually(
        () => job().recordings.length,
        (count) => count === 0,
      );
    }));
});

test('whoever has the link sees the recording’s chart and the finding with its overlay, and can change nothing', () =>
  withChart(async ({ page, server }) => {
    await page.goto(`${server.address}/shared/some-long-token-of-a-link`);
    const recording = page.locator('.recording');
    await recording.locator('.lane-chart canvas').waitFor();
    expect(await page.getByRole('slider', { name: HOLD_END }).count()).toBe(0);
    expect(await recording.getByRole('textbox').count()).toBe(0);
    const finding = page.locator('#finding');
    await finding.locator('.traces canvas').first().waitFor();
    expect(await wordsOf(finding)).toMatch(/0\.62\smm \(0\.56\sto\s0\.69\)/);
    expect(await finding.getByRole('button', { name: /make/i }).count()).toBe(0);
  }));
