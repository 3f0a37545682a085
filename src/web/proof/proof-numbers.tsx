/** Before and after in numbers, and the verdict that follows from them. */
import { type ReactNode, useMemo, useState } from 'react';
import { proofInWords } from '../../checks/proof/words.ts';
import type { Job } from '../../jobs/record/job.ts';
import { type JobProof, proofOfJob } from '../../jobs/record/proof-of-job.ts';
import { type Limit, REFERENCE_LIMITS } from '../../report/limits.ts';
import { readSettings } from '../api/shop.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { SelectField } from '../kit/fields.tsx';
import { LengthBar } from '../kit/length-bar.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useCheckWords } from '../next-check/check-words.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { BudgetTable } from './budget-table.tsx';
import { ConditionTable } from './condition-table.tsx';
import './proof.css';
import { ProofScale } from './proof-scale.tsx';
import { ProofTraces } from './proof-traces.tsx';
import { SizeOne } from './size-one.tsx';
import { useProofSay } from './use-proof-say.ts';

export function ProofNumbers(): ReactNode {
  const { job } = useSheet();
  const { checks, finding } = useText();
  const words = checks.proof;
  const [settings] = useLoaded('settings', readSettings);
  const limits = settings.state === 'there' ? settings.value.limits : REFERENCE_LIMITS;
  const [chosen, setChosen] = useState(job.proof?.limit?.label ?? '');
  const limit = limits.find(({ label }) => label === chosen) ?? limits[0] ?? REFERENCE_LIMITS[0]!;
  const made = useMemo(() => proofOfJob(job, limit.diameterMm), [job, limit.diameterMm]);
  const hasAfter = job.recordings.some(({ taken }) => taken === 'after-repair');
  if (job.repairs.length === 0 && !hasAfter) return null;
  const { before, after, proof } = made;
  return (
    <div className="stack proof-numbers">
      <h3>{words.worked}</h3>
      {(proof.beforeMm === undefined || proof.afterMm === undefined) && <p>{words.none}</p>}
      {before === undefined && proof.beforeMm === undefined && (
        <SizeOne taken="before-repair" words={words.missingBefore} act={words.sizeBefore} />
      )}
      {after === undefined && proof.afterMm === undefined && (
        <SizeOne taken="after-repair" words={words.missingAfter} act={words.sizeAfter} />
      )}
      {(proof.beforeMm !== undefined || proof.afterMm !== undefined) && (
        <ProofScale before={proof.beforeMm} after={proof.afterMm} limitMm={limit.diameterMm} />
      )}
      <SelectField
        label={words.limit}
        hint={finding.size.limitSource(limit.label, limit.source)}
        value={limit.label}
        options={limits.map(({ label }) => ({ value: label, name: label }))}
        onChange={setChosen}
      />
      <ProofShares proof={proof} />
      <ProofVerdict made={made} limit={limit} usual={limits[0]} />
      <ProofEvidence made={made} />
    </div>
  );
}

function ProofShares({ proof }: { readonly proof: JobProof['proof'] }): ReactNode {
  const words = useText().checks.proof;
  const { limitMet, madeDifference, anotherLeak, otherFault } = proof;
  return (
    <div className="stack">
      {otherFault?.after !== undefined && <LengthBar name={words.gone} share={1 - otherFault.after} withWords />}
      {limitMet !== undefined && <LengthBar name={words.limitMet} share={limitMet} withWords />}
      {madeDifference !== undefined && <LengthBar name={words.difference} share={madeDifference} withWords />}
      {anotherLeak !== undefined && <LengthBar name={words.another} share={anotherLeak} isRival withWords />}
    </div>
  );
}

/** What the verdict rests on. */
function ProofEvidence({ made: { before, after, proof } }: { readonly made: JobProof }): ReactNode {
  const { checks } = useText();
  const words = checks.proof;
  const text = checks.catalogue().proof;
  const { causes } = useCheckWords();
  return (
    <>
      {before !== undefined && after !== undefined && <ProofTraces before={before.sheet} after={after.sheet} />}
      {proof.budget !== null && <BudgetTable budget={proof.budget} />}
      <ConditionTable conditions={proof.conditions} />
      <p>
        {words.selfTest}: {text.selfTest[proof.selfTest]}.
      </p>
      {(before !== undefined || proof.beforeMm !== undefined) && (
        <p>
          {proof.notCovered.length === 0 ? text.allCovered : `${words.notCovered}: ${causes(proof.notCovered, 8)}.`}
        </p>
      )}
    </>
  );
}

interface VerdictProps {
  readonly made: JobProof;
  readonly limit: Pick<Limit, 'label' | 'diameterMm'>;
  /** What a proof was judged against that names no limit. */
  readonly usual: Pick<Limit, 'diameterMm'> | undefined;
}

function ProofVerdict({ made: { before, after, proof }, limit, usual }: VerdictProps): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const { checks } = useText();
  const words = checks.proof;
  const said = proofInWords(proof, checks.catalogue().proof, useProofSay());
  const recordingsOf = (finding: JobProof['before']): string[] =>
    job.recordings
      .filter(({ sha256 }) => finding?.sheet.recordings.some((recording) => recording.sha256 === sha256))
      .map(({ id }) => id);
  const taken: NonNullable<Job['proof']> = {
    before: recordingsOf(before),
    after: recordingsOf(after),
    verdict: proof.verdict,
    limit: { label: limit.label, diameterMm: limit.diameterMm },
    words: job.proof?.words ?? '',
    missing: job.proof?.missing ?? '',
  };
  const isTaken =
    job.proof !== null &&
    job.proof.verdict === proof.verdict &&
    (job.proof.limit ?? usual)?.diameterMm === limit.diameterMm;
  return (
    <>
      <h4>{words.verdict}</h4>
      <p className="finding-sentence">{said.verdict}</p>
      {said.against.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {said.missing.length > 0 && (
        <>
          <p>{words.stillMissing}</p>
          <ul>
            {said.missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {!isReadOnly && (
        <div className="buttons">
          <Button
            kind={isTaken ? 'plain' : 'primary'}
            onClick={() => {
              save('proof', taken);
              announce(words.taken);
            }}
          >
            {job.proof === null ? words.take : words.again}
          </Button>
        </div>
      )}
      {job.proof !== null && <p className="quiet">{isTaken ? words.taken : words.differs}</p>}
    </>
  );
}
