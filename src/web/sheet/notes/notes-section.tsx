import { type ReactNode, useState } from 'react';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/fields.tsx';
import { newId } from '../../kit/new-id.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useSheet } from '../sheet-context.ts';
import { useWho } from '../use-who.ts';

export function NotesSection(): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.notes;
  const by = useWho();
  const [typed, setTyped] = useState('');
  const add = (): void => {
    if (typed.trim() === '') return;
    save('notes', [...job.notes, { id: newId(), at: new Date().toISOString(), by, text: typed.trim() }]);
    setTyped('');
  };
  return (
    <>
      {job.notes.length === 0 && <p className="quiet">{words.none}</p>}
      {job.notes.length > 0 && (
        <ul className="rows">
          {job.notes.map((note) => (
            <li key={note.id}>
              <div className="row-head">
                <p className="small quiet">{text.job.check.by(note.by, numbers.dateTime(note.at))}</p>
                {!isReadOnly && (
                  <Button
                    kind="bare"
                    aria-label={words.removeNote}
                    onClick={() =>
                      save(
                        'notes',
                        job.notes.filter((n) => n.id !== note.id),
                      )
                    }
                  >
                    {text.common.remove}
                  </Button>
                )}
              </div>
              <p className="note-text">{note.text}</p>
            </li>
          ))}
        </ul>
      )}
      {!isReadOnly && (
        <>
          <TextField label={words.text} lines={2} value={typed} maxLength={8000} onChange={setTyped} />
          <div className="buttons">
            <Button onClick={add} disabled={typed.trim() === ''}>
              {words.add}
            </Button>
          </div>
        </>
      )}
    </>
  );
}
