export { type SaidRow, sayWith } from '../../report/said.ts';
