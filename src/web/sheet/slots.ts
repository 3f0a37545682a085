/** What the sheet gives to the parts that are drawn by other folders: chart and finding, and the living drawing. */
import type { RefObject } from 'react';

/**
 * Every part of the sheet reads the job and saves through `useSheet()` (`sheet-context.ts`). These names are fixed:
 *
 * - `src/web/recording/recording-section.tsx`  exports `RecordingSection`  (content of the section "Recordings")
 * - `src/web/finding/finding-section.tsx`      exports `FindingSection`    (content of the section "Finding")
 * - `src/web/drawing/drawing-panel.tsx`        exports `DrawingPanel`      (beside the sheet, after the finding on phones)
 * - `src/web/system-page/system-page.tsx`      exports `SystemPage`        (the page `/system`)
 *
 * Each is loaded when it is needed. A section's heading is drawn by the sheet: a part begins at `<h3>`.
 */
export interface RecordingSectionProps {
  /** A file that could not be read stands here with what is known of it, until it is mapped by hand or dismissed. */
  readonly refused: RefusedFile | null;
  readonly dismissRefused: () => void;
}

export interface RefusedFile {
  readonly file: File;
  readonly taken: 'before-repair' | 'after-repair';
  /** An `ApiError`; for status 422 its body is `Unreadable` of the contract, with head and guess. */
  readonly error: unknown;
}

export type FindingSectionProps = Readonly<Record<string, never>>;

export interface DrawingPanelProps {
  /** Where the panel scrolls, on wide screens. */
  readonly frame?: RefObject<HTMLElement | null>;
}
