import { type ReactNode, useId, useState } from 'react';
import { checkById } from '../../checks/catalogue/all.ts';
import type { CheckEntry } from '../../checks/read-entry.ts';
import { Check } from '../kit/choice.tsx';
import { useText } from '../text/language.ts';
import { useInUnits } from '../units/use-in-units.ts';
import { useCheckWords } from './check-words.ts';
import { ResultForm } from './result-form.tsx';

interface Props {
  readonly id: string;
  /** Says why the entry cannot be taken, or takes it. */
  readonly onResult: (entry: CheckEntry) => string | undefined;
}

/** Cautions first; once each is acknowledged the steps show, and the form for what came of them. */
export function CheckSteps({ id, onResult }: Props): ReactNode {
  const { checks, common } = useText();
  const words = checks.next;
  const { check } = useCheckWords();
  const inUnits = useInUnits();
  const catalogue = checks.catalogue();
  const { cautions } = checkById(id);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const heading = useId();
  const open = cautions.filter((caution) => !ticked.has(caution)).length;
  const tick = (caution: string, isTicked: boolean): void => {
    const next = new Set(ticked);
    if (isTicked) next.add(caution);
    else next.delete(caution);
    setTicked(next);
  };
  return (
    <>
      {cautions.length > 0 && (
        <section className="stack" aria-labelledby={heading}>
          <h4 id={heading}>{words.cautions}</h4>
          {cautions.map((caution) => (
            <div key={caution} className="caution" role="note">
              <p className="name">{common.caution}</p>
              <p>{inUnits(catalogue.cautions[caution])}</p>
              <div className="no-print">
                <Check
                  label={words.acknowledge}
                  checked={ticked.has(caution)}
                  onChange={(isTicked) => tick(caution, isTicked)}
                />
              </div>
            </div>
          ))}
          <p className="small quiet">{words.defer}</p>
        </section>
      )}
      {open > 0 ? (
        <p role="status" className="no-print">
          {words.cautionsOpen(open)}
        </p>
      ) : (
        <>
          <h4>{words.steps}</h4>
          <ol>
            {check(id).steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p className="small quiet">
            {words.limits}: {check(id).note}
          </p>
          {checkById(id).group === 'recording' ? (
            <p>
              {words.recordingResult} <a href="#recordings">{words.toRecordings}</a>
            </p>
          ) : (
            <ResultForm key={id} id={id} onResult={onResult} />
          )}
        </>
      )}
    </>
  );
}
