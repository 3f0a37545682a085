/** Before and after in numbers, and the verdict that follows from them. */
import { type ReactNode, useState } from 'react';
import { proofInWords } from '../../checks/proof/words.ts';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import { REFERENCE_LIMITS } from '../../report/limits.ts';
import { startFinding } from '../api/jobs.ts';
import { readSettings } from '../api/shop.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { SelectField } from '../kit/fields.tsx';
import { LengthBar } from '../kit/length-bar.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useCheckWords } from '../next-check/check-words.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useSpoken, useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { ConditionTable } from './condition-table.tsx';
import './proof.css';
import { proofOfJob, recordingsOf } from './proof-of-job.ts';
import { ProofScale } from './proof-scale.tsx';

export function ProofNumbers(): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const { language } = useSpoken();
  const { checks, finding } = useText();
  const words = checks.proof;
  const { causes } = useCheckWords();
  const [settings] = useLoaded('settings', readSettings);
  const limits = settings.state === 'there' ? settings.value.limits : REFERENCE_LIMITS;
  const [chosen, setChosen] = useState('');
  const limit = limits.find(({ label }) => label === chosen) ?? limits[0] ?? REFERENCE_LIMITS[0]!;
  const hasAfter = job.recordings.some(({ taken }) => taken === 'after-repair');
  if (job.repairs.length === 0 && !hasAfter) return null;
  const { before, after, proof } = proofOfJob(job, limit.diameterMm);
  const sentences = proofInWords(proof, limit.diameterMm, language);
  const missing = sentences.slice(1).filter((sentence) => /^(Still missing|Es fehlt noch)/.test(sentence));
  const said = sentences.filter((sentence) => !missing.includes(sentence));
  const made: NonNullable<Job['proof']> = {
    before: before === undefined ? [] : recordingsOf(job, before),
    after: after === undefined ? [] : recordingsOf(job, after),
    verdict: proof.verdict,
    words: said.join(' '),
    missing: missing.join(' '),
  };
  const isTaken = job.proof !== null && job.proof.words === made.words && job.proof.verdict === made.verdict;
  return (
    <div className="stack proof-numbers">
      <h3>{words.worked}</h3>
      {(before === undefined || after === undefined) && <p>{words.none}</p>}
      {before === undefined && <SizeOne taken="before-repair" words={words.missingBefore} act={words.sizeBefore} />}
      {after === undefined && <SizeOne taken="after-repair" words={words.missingAfter} act={words.sizeAfter} />}
      {(before !== undefined || after !== undefined) && (
        <ProofScale
          before={before?.sheet.finding.diameterMm ?? undefined}
          after={after?.sheet.finding.diameterMm ?? undefined}
          limitMm={limit.diameterMm}
        />
      )}
      <SelectField
        label={words.limit}
        hint={finding.size.limitSource(limit.label, limit.source)}
        value={limit.label}
        options={limits.map(({ label }) => ({ value: label, name: label }))}
        onChange={setChosen}
      />
      <div className="stack">
        {proof.limitMet !== undefined && <LengthBar name={words.limitMet} share={proof.limitMet} withWords />}
        {proof.madeDifference !== undefined && (
          <LengthBar name={words.difference} share={proof.madeDifference} withWords />
        )}
        {proof.anotherLeak !== undefined && (
          <LengthBar name={words.another} share={proof.anotherLeak} isRival withWords />
        )}
      </div>
      <ConditionTable conditions={proof.conditions} />
      <p>
        {words.selfTest}: {words.selfTests[proof.selfTest]}.
      </p>
      {before !== undefined &&
        (proof.notCovered.length === 0 ? (
          <p>{words.allCovered}</p>
        ) : (
          <p>
            {words.notCovered}: {causes(proof.notCovered, 8)}.
          </p>
        ))}
      <h4>{words.verdict}</h4>
      <p className="finding-sentence">{said[0]}</p>
      {missing.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {!isReadOnly && (
        <div className="buttons">
          <Button
            kind={isTaken ? 'plain' : 'primary'}
            onClick={() => {
              save('proof', made);
              announce(words.taken);
            }}
          >
            {job.proof === null ? words.take : words.again}
          </Button>
        </div>
      )}
      {job.proof !== null && <p className="quiet">{isTaken ? words.taken : words.differs}</p>}
    </div>
  );
}

interface SizeProps {
  readonly taken: RecordingEntry['taken'];
  readonly words: string;
  readonly act: string;
}

/** A finding from the recordings of one side of the repair alone. */
function SizeOne({ taken, words, act }: SizeProps): ReactNode {
  const { job, work, flush, follow, isReadOnly } = useSheet();
  const { checks } = useText();
  const { percent } = useNumbers();
  const [error, setError] = useState<unknown>(null);
  const running = work.find(({ kind, state }) => kind === 'finding' && (state === 'running' || state === 'waiting'));
  const can = job.car !== null && job.recordings.some((entry) => entry.taken === taken && entry.useInFinding);
  const start = async (): Promise<void> => {
    setError(null);
    try {
      await flush();
      follow(await startFinding(job.id, taken));
    } catch (problem) {
      setError(problem);
    }
  };
  return (
    <Message>
      <p>{words}</p>
      {error !== null && <ErrorMessage error={error} />}
      {running !== undefined && (
        <p>
          {checks.proof.sizing}: {percent(running.fraction)}
        </p>
      )}
      {running === undefined && can && !isReadOnly && (
        <div className="buttons">
          <Button onClick={() => void start()}>{act}</Button>
        </div>
      )}
    </Message>
  );
}
