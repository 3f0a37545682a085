/** The faces of the sheet, handed in as bytes: the report itself reads no files. */
export interface FontBytes {
  readonly serif: Uint8Array;
  readonly serifStrong: Uint8Array;
  readonly sans: Uint8Array;
  readonly sansStrong: Uint8Array;
}

/** Where the installed packages keep them, for whoever reads files. Both under the SIL Open Font License 1.1. */
export const FONT_FILES: Readonly<Record<keyof FontBytes, string>> = {
  serif: '@fontsource/source-serif-4/files/source-serif-4-latin-400-normal.woff2',
  serifStrong: '@fontsource/source-serif-4/files/source-serif-4-latin-600-normal.woff2',
  sans: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-400-normal.woff2',
  sansStrong: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-700-normal.woff2',
};
