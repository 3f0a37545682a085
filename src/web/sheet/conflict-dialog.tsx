import type { ReactNode } from 'react';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { useText } from '../text/language.ts';
import { Difference } from './difference/difference.tsx';
import type { SaverView } from './job-saver.ts';

interface Props {
  readonly conflict: NonNullable<SaverView['conflict']>;
  readonly choose: (which: 'mine' | 'theirs') => void;
}

/** Two windows wrote into one section: both are shown, nothing is overwritten until the person chooses. */
export function ConflictDialog({ conflict, choose }: Props): ReactNode {
  const { job } = useText();
  const words = job.conflict;
  return (
    <Dialog title={words.title} onClose={() => undefined} isForced>
      <p>{words.words(job.sectionNames[conflict.section])}</p>
      <Difference
        section={conflict.section}
        mine={conflict.mine}
        theirs={conflict.theirs}
        mineName={words.mine}
        theirsName={words.theirs}
      />
      <div className="buttons">
        <Button kind="primary" onClick={() => choose('mine')}>
          {words.keepMine}
        </Button>
        <Button onClick={() => choose('theirs')}>{words.takeTheirs}</Button>
      </div>
    </Dialog>
  );
}
