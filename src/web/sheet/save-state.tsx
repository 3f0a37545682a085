import type { ReactNode } from 'react';
import { Button } from '../kit/button.tsx';
import { useText } from '../text/language.ts';
import { useSheet } from './sheet-context.ts';

/** At the right end of the head: whether all is saved, and the way back. */
export function SaveStateWords(): ReactNode {
  const { state, undo, isReadOnly } = useSheet();
  const { job } = useText();
  if (isReadOnly) return null;
  return (
    <>
      <span className={state === 'refused' || state === 'queued' ? 'warn' : ''}>{job.state[state]}</span>
      <Button kind="bare" onClick={() => void undo()} aria-keyshortcuts="Control+Z">
        {job.undo}
      </Button>
    </>
  );
}
