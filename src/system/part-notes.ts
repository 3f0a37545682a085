/**
 * What is known of parts beside how they are modelled, as far as it needs no language: codes that they set, and which cautions
 * go with work on them. Codes: SAE J2012 families as the trade meets them (common practice, no source). The words stand with
 * the pages' other words.
 */
import type { PartId } from './parts.ts';

/** Cautions by name; their words are the pages'. */
export const PART_CAUTIONS = [
  'vapour',
  'noShopAir',
  'pressure',
  'vacuum',
  'openSlowly',
  'sealedTank',
  'loweringTank',
  'hotParts',
  'poweringValves',
  'selfTest',
  'carbonDust',
  'highVoltage',
  'noHotWork',
] as const;
export type PartCaution = (typeof PART_CAUTIONS)[number];

export interface PartNote {
  /** Diagnostic trouble codes that this part most often stands behind. */
  readonly codes: readonly string[];
  readonly cautions: readonly PartCaution[];
}

export const PART_NOTES: Readonly<Record<PartId, PartNote>> = {
  cap: { codes: ['P0457', 'P0455', 'P0442', 'P0456'], cautions: ['openSlowly', 'vapour'] },
  fillerFlap: { codes: ['P0457', 'P0455', 'P0456'], cautions: ['openSlowly', 'vapour'] },
  fillerNeck: { codes: ['P0455', 'P0442', 'P0456'], cautions: ['vapour', 'noHotWork', 'pressure'] },
  fillerHose: { codes: ['P0442', 'P0456'], cautions: ['vapour', 'pressure'] },
  fillLimitValve: { codes: ['P0446'], cautions: ['loweringTank', 'vapour', 'noShopAir'] },
  rolloverValve: { codes: ['P0450'], cautions: ['loweringTank', 'vapour', 'noShopAir'] },
  vapourLine: { codes: ['P0442', 'P0455'], cautions: ['vapour', 'noShopAir'] },
  canister: { codes: ['P0442', 'P0455'], cautions: ['vapour', 'vacuum', 'carbonDust'] },
  carbonBed: { codes: ['P0172', 'P0441', 'P0446'], cautions: ['carbonDust', 'vapour'] },
  purgeLine: { codes: ['P0455', 'P0441'], cautions: ['hotParts', 'vacuum'] },
  purgeValve: {
    codes: ['P0496', 'P0441', 'P0497', 'P0443', 'P0444', 'P0445', 'P0458', 'P0459'],
    cautions: ['hotParts', 'poweringValves'],
  },
  ventValve: {
    codes: ['P0446', 'P0447', 'P0448', 'P0449', 'P0498', 'P0499', 'P2421', 'P2422', 'P0455', 'P0442'],
    cautions: ['poweringValves', 'selfTest', 'vacuum'],
  },
  ventFilter: { codes: ['P0446', 'P2422'], cautions: ['vapour'] },
  pressureSensor: { codes: ['P0450', 'P0451', 'P0452', 'P0453', 'P0454'], cautions: ['pressure', 'openSlowly'] },
  levelSender: {
    codes: ['P0460', 'P0461', 'P0462', 'P0463', 'P0464', 'P2065', 'P2066'],
    cautions: ['loweringTank', 'vapour'],
  },
  temperatureSensor: { codes: ['P0180', 'P0071', 'P0072', 'P0073'], cautions: ['selfTest'] },
  senderSeal: { codes: ['P0442', 'P0456', 'P0455'], cautions: ['loweringTank', 'vapour', 'openSlowly'] },
  tankShell: { codes: ['P0442', 'P0456'], cautions: ['loweringTank', 'noHotWork', 'vacuum'] },
  pumpModule: {
    codes: ['P043E', 'P043F', 'P2400', 'P2401', 'P2402', 'P2418', 'P2419'],
    cautions: ['selfTest', 'poweringValves'],
  },
  changeoverValve: { codes: ['P2418', 'P2419', 'P2420'], cautions: ['selfTest', 'poweringValves'] },
  referenceOrifice: { codes: ['P043E', 'P043F'], cautions: ['selfTest'] },
  isolationValve: { codes: ['P2450', 'P2451'], cautions: ['sealedTank', 'highVoltage', 'vapour'] },
  manifoldCheckValve: { codes: ['P04F0', 'P04F1'], cautions: ['hotParts'] },
  ejectorCheckValve: { codes: ['P04F0', 'P04F1'], cautions: ['hotParts'] },
  ejector: { codes: ['P04F0', 'P0171'], cautions: ['hotParts'] },
  crossover: { codes: [], cautions: ['loweringTank', 'vapour'] },
  transferPump: { codes: ['P0461', 'P2065', 'P2066'], cautions: ['loweringTank', 'vapour'] },
};
