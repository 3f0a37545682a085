/** The faces of the sheet, handed in as bytes: the report itself reads no files. */
export interface FontBytes {
  readonly serif: Uint8Array;
  readonly serifStrong: Uint8Array;
  readonly sans: Uint8Array;
  readonly sansStrong: Uint8Array;
}

type FontFiles = Readonly<Record<keyof FontBytes, string>>;

const SERIF = '@fontsource/source-serif-4/files/source-serif-4-latin';
const SANS = '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin';

const files = (ending: string): FontFiles => ({
  serif: `${SERIF}-400-normal.${ending}`,
  serifStrong: `${SERIF}-600-normal.${ending}`,
  sans: `${SANS}-400-normal.${ending}`,
  sansStrong: `${SANS}-700-normal.${ending}`,
});

/** Where the installed packages keep them, for whoever reads files. Both under the SIL Open Font License 1.1. */
export const PAGE_FONT_FILES: FontFiles = files('woff2');

/** The PDF library cannot subset composite glyphs of a woff2 file; the woff file holds the same outlines. */
export const PDF_FONT_FILES: FontFiles = files('woff');
