/** Name and version as reports and `--version` state them; a test compares them with package.json. */
export const PROGRAM_VERSION = '0.6.0';
export const PROGRAM = `vaporwright ${PROGRAM_VERSION}`;
