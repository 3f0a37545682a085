/** What the hand-over says and does not say, in both languages and on page and paper alike. */
import { describe, expect, test } from 'vitest';
import { judgeProof } from '../../src/checks/proof/proof.ts';
import { deskOf } from '../../src/report/hand-over/desk.ts';
import type { HandOver } from '../../src/report/hand-over/hand-over.ts';
import { handOverDocument } from '../../src/report/hand-over/hand-over-document.ts';
import { handOverHtml } from '../../src/report/hand-over/html.ts';
import { notVerified } from '../../src/report/hand-over/not-verified.ts';
import { provenSentences } from '../../src/report/hand-over/outcome.ts';
import { sampleHandOver, sampleProof } from './sample-hand-over.ts';

const font = new Uint8Array([1, 2, 3]);
const fonts = { serif: font, serifStrong: font, sans: font, sansStrong: font };
const open = (given: HandOver): string => notVerified(deskOf(given)).join('\n').replaceAll('\u00a0', ' ');
const proven = (given: HandOver): string => provenSentences(deskOf(given)).join('\n').replaceAll('\u00a0', ' ');
const page = (given: HandOver): string =>
  handOverHtml(given, fonts)
    .replace(/<style>[\s\S]*?<\/style>/, '')
    .replaceAll('\u00a0', ' ');

describe('the honest list', () => {
  test('a repair without a recording after it is not proven, and says so', () => {
    const { after: _, sectionsAfterMm: __, ...before } = sampleProof;
    const given: HandOver = {
      ...sampleHandOver,
      recordings: sampleHandOver.recordings.slice(0, 1),
      findings: { ...sampleHandOver.findings, after: null },
      proof: null,
      worked: { ...sampleHandOver.worked!, proof: judgeProof(before) },
    };
    expect(open(given)).toContain('has not been measured since the repair');
    expect(open(given)).toContain('follows from the figures alone');
    expect(proven(given)).toContain('Not proven');
    expect(proven(given)).not.toContain('0.18');
  });

  test('a recording after the repair without a finding is named', () => {
    expect(open({ ...sampleHandOver, findings: { ...sampleHandOver.findings, after: null } })).toContain(
      'no finding has been made from it',
    );
  });

  test('a fault that is still there is named with its probability', () => {
    const findings = { ...sampleHandOver.findings, after: sampleHandOver.findings.before };
    expect(open({ ...sampleHandOver, findings })).toContain('still shows: leak to the open air (91 %)');
  });

  test('an outdated finding, codes not read again, a verdict against it', () => {
    const before = { ...sampleHandOver.findings.before!, outdated: true };
    const given: HandOver = {
      ...sampleHandOver,
      findings: { before, after: null },
      codes: { before: sampleHandOver.codes.before, after: null },
      proof: { verdict: 'not-held', words: '', missing: 'The cap of the second car.' },
    };
    const said = open(given);
    expect(said).toContain('older program');
    expect(said).toContain('not read again');
    expect(said).toContain('did not hold');
    expect(said.startsWith('The cap of the second car.')).toBe(true);
  });

  test('codes that remain are named', () => {
    expect(open({ ...sampleHandOver, codes: { before: [], after: sampleHandOver.codes.before } })).toContain(
      'still present: P0456',
    );
  });

  test('other conditions are named in the units of the reader', () => {
    const conditions = { method: 'engine-off', fuelLevel: 0.8, ambientTemperatureK: 303.15 };
    const given: HandOver = {
      ...sampleHandOver,
      units: { ...sampleHandOver.units, temperature: 'degF' },
      worked: {
        ...sampleHandOver.worked!,
        proof: judgeProof({ ...sampleProof, after: { ...sampleProof.after, conditions } }),
      },
    };
    const said = open(given);
    expect(said).toContain('(leak self-test, engine running (vacuum draw) before, engine-off vacuum test after)');
    expect(said).toContain('fuel level (41 % before, 80 % after)');
    expect(said).toContain('(64 °F before, 86 °F after)');
  });

  test('the car’s own test is never said to be passed', () => {
    expect(open(sampleHandOver)).toContain('only the car can run it');
    expect(proven(sampleHandOver)).not.toContain('ran and passed');
  });
});

test('what is proven has a number before and after', () => {
  expect(proven(sampleHandOver)).toContain('0.62 mm (0.56 to 0.69)');
  expect(proven(sampleHandOver)).toContain('smaller than 0.18 mm with 95 % probability');
});

test('a fault that is no hole is compared by its probability', () => {
  const cause = { ...sampleHandOver.findings.before!.finding.causes[4]!, probability: 0.97 };
  const finding = { ...sampleHandOver.findings.before!.finding, causes: [cause], diameterMm: null };
  const findings = { ...sampleHandOver.findings, before: { ...sampleHandOver.findings.before!, finding } };
  const worked = {
    ...sampleHandOver.worked!,
    proof: judgeProof({
      ...sampleProof,
      before: { conditions: { method: 'purge-drive' } },
      repairsHole: false,
      otherFault: { before: 0.97, after: 0.0001 },
    }),
  };
  expect(proven({ ...sampleHandOver, findings, worked })).toContain('97 % before the repair, under 0.1 % after it');
});

test('a size that is not that of the first cause says why', () => {
  const before = sampleHandOver.findings.before!;
  const [first, ...others] = before.finding.causes;
  const told = (finding: Partial<typeof before.finding>) =>
    page({
      ...sampleHandOver,
      findings: { ...sampleHandOver.findings, before: { ...before, finding: { ...before.finding, ...finding } } },
    });
  const own = { median: 0.7, lo90: 0.6, hi90: 0.8 };
  expect(told({ causes: [{ ...first!, diameterMm: own }, ...others] })).toContain('its own size is 0.70 mm');
  const { diameterMm: _, ...sizeless } = first!;
  expect(told({ causes: [{ ...sizeless, id: 'purge_leak' }, ...others] })).toContain(
    'beside “purge valve seeps when shut”',
  );
  expect(page(sampleHandOver)).not.toContain('weighed over all causes');
});

describe('the proof', () => {
  test('its figures stand on the customer’s page and in the evidence, the verdict first', () => {
    const [customer, evidence] = handOverDocument(sampleHandOver).parts;
    for (const part of [customer!, evidence!]) {
      const said = JSON.stringify(part).replaceAll('\u00a0', ' ');
      expect(said).toContain('Not proven');
      expect(said).toContain('smaller than 0.50 mm with a probability of');
      expect(said).toContain('The repair made a difference with a probability of');
      expect(said).toContain('Another leak remains with a probability of');
      expect(said).toContain('this proof does not cover: purge valve stays shut (5 %)');
    }
  });

  test.each([
    ['en', 'Leak budget', 'tank and neck', 'volatility of the fuel', 'Dashed: recorded before the repair'],
    ['de', 'Leckbilanz', 'Tank und Stutzen', 'Flüchtigkeit des Kraftstoffs', 'Gestrichelt: vor der Reparatur'],
  ] as const)('%s: budget, conditions with volatility, both traces in one figure', (language, ...expected) => {
    const html = page({ ...sampleHandOver, language });
    for (const words of expected) expect(html.toLowerCase()).toContain(words.toLowerCase());
  });

  test('a verdict by hand that the figures do not bear out is told apart', () => {
    const proof = { ...sampleHandOver.proof!, verdict: 'held' as const };
    const said = proven({ ...sampleHandOver, proof });
    expect(said).toContain('The repair held.');
    expect(said).toContain('By the figures alone: Not proven');
  });

  test('nothing repaired, nothing proven', () => {
    expect(proven({ ...sampleHandOver, repairs: [], proof: null, worked: null })).toBe(
      'There is nothing to prove yet.',
    );
  });
});

describe('the page', () => {
  test('needs nothing from outside and runs no script', () => {
    const html = handOverHtml(sampleHandOver, fonts);
    expect(html).not.toMatch(/<script|<link|@import|javascript:/i);
    for (const [, address] of html.matchAll(/<img src="([^"]*)"/g))
      expect(address).toMatch(/^data:image\/jpeg;base64,/);
    for (const [, address] of html.matchAll(/url\(([^)]*)\)/g)) expect(address).toMatch(/^data:/);
  });

  test('holds the photos with their captions, and lists every file with its hash', () => {
    const html = handOverHtml(sampleHandOver, fonts);
    const { picture } = sampleHandOver.attachments[0]!;
    expect(html.match(/<img /g)).toHaveLength(1);
    expect(html).toContain(`base64,${Buffer.from(picture!.bytes).toString('base64')}`);
    expect(html).toContain('alt="the seal of the old cap"');
    expect(html).toContain('The seal of the old cap. cap.jpg, 2026-03-04');
    expect(html).toContain('Invoice of the cap. 2026-03-05. SHA-256 cdcd');
  });

  test('text from outside stays text', () => {
    const html = page({ ...sampleHandOver, complaint: { words: '<b onload="x">smells</b>', types: [] } });
    expect(html).toContain('&lt;b onload=&quot;x&quot;&gt;smells&lt;/b&gt;');
    expect(html).not.toContain('<b onload');
  });

  test.each([
    ['en', 'What you told us', 'Not yet verified', 'Local codes', 'discharge coefficient 0.61', 'Invented car'],
    [
      'de',
      'Was Sie uns sagten',
      'Noch nicht geprüft',
      'Örtliche Vorschriften',
      'Durchflusszahl 0,61',
      'Erfundenes Fahrzeug',
    ],
  ] as const)('in %s holds its parts', (language, ...expected) => {
    const html = page({ ...sampleHandOver, language });
    expect(html).toContain(`<html lang="${language}">`);
    for (const words of expected) expect(html).toContain(words);
    for (const { sha256 } of sampleHandOver.recordings) expect(html).toContain(sha256);
    expect(html).toContain('vaporwright 0.0.0-test');
    expect(html).toContain('INV-0001');
    expect(html).toContain('1480 1/min');
  });

  test('one outline: a title, parts, sections; every id once', () => {
    const html = page(sampleHandOver);
    expect(html.match(/<h1/g)).toHaveLength(1);
    expect(html.match(/<h2/g)).toHaveLength(2);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('units are switched everywhere at once', () => {
    const units = { pressure: 'inH2O', length: 'in', temperature: 'degF' } as const;
    // Sentences of the finding itself are made in SI and stay so; here are none.
    const silent = { ...sampleHandOver.findings.before!.finding, reasons: [], warnings: [] };
    const findings = { ...sampleHandOver.findings, before: { ...sampleHandOver.findings.before!, finding: silent } };
    const html = page({ ...sampleHandOver, units, findings, limits: [{ diameterMm: 0.7, label: 'own', source: 'x' }] });
    expect(html.includes('0.024 in (0.022 to 0.027)')).toBe(true);
    expect(html.includes('64 °F')).toBe(true);
    expect(html.match(/\d (kPa|mm|°C)(?![\w (])/g)).toBeNull();
  });
});

test('only the parts that are asked for', () => {
  expect(handOverDocument({ ...sampleHandOver, parts: ['evidence'] }).parts.map(({ id }) => id)).toEqual(['evidence']);
});

test('a sealed tank adds its own caution', () => {
  expect(page(sampleHandOver)).not.toContain('refuelling request before');
  const car = { ...sampleHandOver.car!, layout: 'sealed-tank' as const };
  expect(page({ ...sampleHandOver, car })).toContain('release it through the vehicle’s own refuelling request');
});
