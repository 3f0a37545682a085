/** Progress of a finding in the words of the report: the finding itself only knows its causes by id. */
import { CAUSES } from '../../diagnosis/finding.ts';
import { CAUSE_WORDS } from '../../report/words.ts';

export const progressInWords = (what: string): string =>
  CAUSES.reduce((words, id) => (words === `trying ${id}` ? `trying: ${CAUSE_WORDS[id].name}` : words), what);
