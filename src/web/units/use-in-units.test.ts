/** Whatever unit is chosen, no text that names a typical value keeps another one. */
import { describe, expect, test } from 'vitest';
import { DE as CHECKS_DE } from '../../checks/text/de.ts';
import { EN as CHECKS_EN } from '../../checks/text/en.ts';
import { SEALED_TANK_CAUTION, STANDING_CAUTIONS } from '../../report/cautions.ts';
import { SEALED_TANK_CAUTION_DE, STANDING_CAUTIONS_DE } from '../../report/cautions-de.ts';
import { textInUnits } from '../../units/text-in-units.ts';
import { PARTS_DE } from '../text/parts.de.ts';
import { PARTS_EN } from '../text/parts.en.ts';
import { allUnbroken } from '../text/unbroken.ts';
import { allSaid } from './use-in-units.ts';

const textsOf = (part: unknown): string[] =>
  typeof part === 'string'
    ? [part]
    : typeof part === 'object' && part !== null
      ? Object.values(part).flatMap(textsOf)
      : [];

const CATALOGUES = {
  en: [PARTS_EN, CHECKS_EN.checks, CHECKS_EN.cautions, STANDING_CAUTIONS, SEALED_TANK_CAUTION],
  de: [PARTS_DE, CHECKS_DE.checks, CHECKS_DE.cautions, STANDING_CAUTIONS_DE, SEALED_TANK_CAUTION_DE],
} as const;
const OTHERS = {
  kPa: /inH|inHg|mmHg|psi|\d[\s\u00a0]Pa/,
  inH2O: /kPa|inHg|mmHg|psi|\d[\s\u00a0]Pa/,
  mmHg: /kPa|inH|inHg|psi|\d[\s\u00a0]Pa/,
  psi: /kPa|inH|inHg|mmHg|\d[\s\u00a0]Pa/,
} as const;

describe.each(['en', 'de'] as const)('%s', (language) => {
  const texts = textsOf(allUnbroken(CATALOGUES[language]));

  test('there are such values', () => {
    expect(texts.filter((text) => OTHERS.mmHg.test(text)).length).toBeGreaterThan(20);
  });

  test.each(Object.entries(OTHERS))('in %s', (pressure, others) => {
    const units = {
      pressure,
      length: pressure === 'kPa' ? 'mm' : 'in',
      temperature: pressure === 'kPa' ? '°C' : '°F',
      number: (value: number, decimals: number) => value.toFixed(decimals),
      symbol: (unit: string) => unit,
    };
    const said = allSaid(texts, (text) => textInUnits(text, units));
    expect(said.filter((text) => others.test(text))).toEqual([]);
    const rest = pressure === 'kPa' ? /°F|\d[\s\u00a0]in\b(?=[).,;])/ : /°C|\d[\s\u00a0]mm\b/;
    expect(said.filter((text) => rest.test(text) || /\d[\s\u00a0]K\b/.test(text))).toEqual([]);
  });
});
