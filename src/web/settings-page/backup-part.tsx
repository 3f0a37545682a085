import { type ReactNode, useState } from 'react';
import { forgetReadings, makeBackup, restoreBackup } from '../api/shop.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { Check } from '../kit/choice.tsx';
import { FileButton } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { saveFile } from '../kit/save-file.ts';
import { useText } from '../text/language.ts';

export function BackupPart(): ReactNode {
  const text = useText();
  const words = text.shop.settings;
  const [isSure, setIsSure] = useState(false);
  const [isBusy, setIsBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const attempt = async (request: () => Promise<void>): Promise<void> => {
    setError(null);
    setIsBusy(true);
    try {
      await request();
    } catch (problem) {
      setError(problem);
    }
    setIsBusy(false);
  };
  return (
    <>
      <p>{words.backupWords}</p>
      <div className="buttons">
        <Button
          disabled={isBusy}
          onClick={() =>
            void attempt(async () => {
              const { blob, fileName } = await makeBackup();
              saveFile(blob, fileName);
              announce(text.jobs.backupMade);
            })
          }
        >
          {words.makeBackup}
        </Button>
      </div>
      <div className="caution stack">
        <h3>{words.restore}</h3>
        <p>{words.restoreWords}</p>
        <Check label={words.restoreConfirm} checked={isSure} onChange={setIsSure} />
        <div className="buttons">
          <FileButton
            label={words.restore}
            disabled={!isSure || isBusy}
            onFiles={([file]) =>
              file &&
              void attempt(async () => {
                await restoreBackup(file, true);
                // What was kept for reading belongs to the jobs that are gone.
                await forgetReadings();
                announce(words.restored);
                setIsSure(false);
              })
            }
          />
        </div>
      </div>
      {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
    </>
  );
}
