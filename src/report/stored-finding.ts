/** A finding as a file keeps it: numbers that are not finite become null, and traces keep only digits that mean something. */
import type { Finding, Overlay } from '../diagnosis/finding.ts';
import type { StoredSheet } from './sheet.ts';

type StoredFinding = StoredSheet['finding'];

/** A hundredth of a pascal and a millisecond are below what any sensor or picture resolves. */
const rounded = (values: readonly number[], digits: number): (number | null)[] =>
  values.map((value) => (Number.isFinite(value) ? Number(value.toFixed(digits)) : null));

const storedOverlay = (overlay: Overlay): StoredFinding['overlays'][number] => ({
  ...overlay,
  timeS: overlay.timeS.map((t) => Number(t.toFixed(3))),
  recordedGaugePa: rounded(overlay.recordedGaugePa, 2),
  modelledGaugePa: rounded(overlay.modelledGaugePa, 2),
  bandPa: rounded(overlay.bandPa, 2),
});

export const storedFinding = (finding: Finding): StoredFinding => ({
  ...finding,
  causes: finding.causes.map((cause) => ({
    ...cause,
    relativeLogEvidence: Number.isFinite(cause.relativeLogEvidence) ? cause.relativeLogEvidence : null,
    byPhase: cause.byPhase.filter(({ logEvidence }) => Number.isFinite(logEvidence)),
  })),
  overlays: finding.overlays.map(storedOverlay),
});
