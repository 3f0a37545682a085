import { describe, expect, test } from 'vitest';
import { FEDERAL_RULE, INSPECTION_RULES } from '../../readiness/inspection-rules.ts';
import { EMPTY_SECTIONS } from './empty-job.ts';
import type { MonitorReading } from './monitor.ts';
import {
  codesWhen,
  conditionsOfJob,
  inspectionOf,
  monitorOf,
  newestReading,
  planOptionsOf,
  ruleOfJob,
  rulesOf,
} from './monitor-of-job.ts';

const reading = (at: string, more: Partial<MonitorReading> = {}): MonitorReading => ({
  id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b78',
  at,
  by: 'Anna',
  source: 'by-hand',
  taken: 'before-repair',
  status: {},
  codes: [],
  codesRead: [],
  results: [],
  ...more,
});
const jobWith = (readings: readonly MonitorReading[]) => ({
  ...EMPTY_SECTIONS,
  monitor: { ...EMPTY_SECTIONS.monitor, readings: [...readings] },
});

test('a job of an older program has an empty section', () => {
  expect(monitorOf({})).toEqual(EMPTY_SECTIONS.monitor);
});

test('the newest reading is the one that the car was read last, not the one entered last', () => {
  const [march, april] = [reading('2026-03-01T08:00:00.000Z'), reading('2026-04-01T08:00:00.000Z')];
  expect(newestReading(jobWith([april, march]))).toBe(april);
  expect(newestReading(jobWith([april, march]), 'after-repair')).toBeUndefined();
});

describe('codes when a recording was made', () => {
  const written = { ...jobWith([]), codes: [{ code: 'P0452', status: 'stored' as const }] };
  test('from the car where its list was read, empty or not', () => {
    const read = reading('2026-03-01T08:00:00.000Z', {
      codesRead: ['confirmed', 'permanent'],
      codes: [{ code: 'P0456', status: 'permanent' }],
    });
    expect(codesWhen({ ...written, monitor: jobWith([read]).monitor }, 'before-repair')).toEqual([]);
  });
  test('else as written; after the repair those say nothing', () => {
    expect(codesWhen(written, 'before-repair')).toEqual(['P0452']);
    expect(codesWhen(written, 'after-repair')).toBeUndefined();
    expect(codesWhen(jobWith([]), 'before-repair')).toBeUndefined();
  });
});

describe('the rule', () => {
  const own = { ...FEDERAL_RULE, id: 'here', name: 'Here', mark: 'given by the user' as const };
  test('of the job, else of the shop, else the federal one; a rule that is gone is passed over', () => {
    const job = jobWith([]);
    const settings = { inspectionRules: [own], inspectionRule: 'here' };
    expect(ruleOfJob(job, {}).id).toBe(FEDERAL_RULE.id);
    expect(ruleOfJob(job, settings).id).toBe('here');
    const chosen = { monitor: { ...job.monitor, ruleId: INSPECTION_RULES[1]!.id } };
    expect(ruleOfJob(chosen, settings).id).toBe(INSPECTION_RULES[1]!.id);
    expect(ruleOfJob({ monitor: { ...job.monitor, ruleId: 'gone' } }, settings).id).toBe('here');
  });
  test('one of the shop with the id of a shipped one takes its place', () => {
    const replaced = { ...own, id: FEDERAL_RULE.id };
    expect(rulesOf({ inspectionRules: [replaced] })).toEqual([replaced, ...INSPECTION_RULES.slice(1)]);
  });
});

test('without a model year there is no verdict, without a forecast or a layout no plan', () => {
  const job = jobWith([]);
  expect(inspectionOf(job, reading('2026-03-01T08:00:00.000Z'), FEDERAL_RULE)).toBeUndefined();
  expect(conditionsOfJob(job)).toBeUndefined();
  expect(planOptionsOf(job, Date.parse('2026-03-01T08:00:00.000Z'))).toBeUndefined();
});

test('hours without a date are counted from when they were typed, however late the plan is made', () => {
  const typedAt = '2026-03-01T08:00:00.000Z';
  const job = {
    ...jobWith([]),
    car: { schema: 'vaporwright-car-1', label: 'made', layout: 'engine-vacuum', demo: true } as const,
  };
  const plan = { routine: [], forecast: { text: '09:00 4\n10:00 5', unit: 'C' as const, typedAt, zone: 'UTC' } };
  const options = planOptionsOf({ ...job, monitor: { ...job.monitor, plan } }, Date.parse('2026-03-02T20:00:00.000Z'));
  expect(options?.forecast.map(({ momentMs }) => new Date(momentMs).toISOString())).toEqual([
    '2026-03-01T09:00:00.000Z',
    '2026-03-01T10:00:00.000Z',
  ]);
});
