/** What to do next and why: the planner's first step, its cautions, steps and result form. */
import { type ReactNode, useMemo, useRef, useState } from 'react';
import { checkById } from '../../checks/catalogue/all.ts';
import { checkKey, figureValues } from '../../checks/figures.ts';
import { beliefOf, type JobState } from '../../checks/job-state.ts';
import type { Plan } from '../../checks/plan.ts';
import type { CheckEntry } from '../../checks/read-entry.ts';
import { cautionsOfRepair } from '../../checks/repair-cautions.ts';
import type { RepairId } from '../../checks/repairs.ts';
import { setupKey } from '../../checks/setups.ts';
import { columnsOf } from '../../diagnosis/priors/root-causes.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { Caution } from '../kit/caution.tsx';
import { LengthBar } from '../kit/length-bar.tsx';
import { Message } from '../kit/message.tsx';
import { newId } from '../kit/new-id.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useWho } from '../sheet/use-who.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useInUnits } from '../units/use-in-units.ts';
import { CheckSteps } from './check-steps.tsx';
import { useCheckWords } from './check-words.ts';
import { Circumstances } from './circumstances.tsx';
import { FiguresEditor } from './figures-editor.tsx';
import './next-check.css';
import { OtherChecks } from './other-checks.tsx';
import { PlanSteps } from './plan-steps.tsx';
import { PlanAnswers, PlanStop, PlanWhy } from './plan-why.tsx';
import { RecordingsWorth } from './recordings-worth.tsx';
import { cannotBeDone, stateOfJob } from './state-of-job.ts';
import { StepFacts } from './step-facts.tsx';
import { usePlan } from './use-plan.ts';
import { useShopFigures } from './use-shop-figures.ts';
import { useMissing, useWishes } from './use-wishes.ts';
import { verificationFor } from './verification.ts';

export function NextCheck(): ReactNode {
  const { job } = useSheet();
  const { checks } = useText();
  const [wishes, wish] = useWishes(job.id);
  const shop = useShopFigures();
  const missing = useMissing();
  const state = useMemo(
    () => stateOfJob(job, wishes, shop.changes, missing[0]),
    [job, wishes, shop.changes, missing[0]],
  );
  if (state === null) return <p>{checks.next.needsCar}</p>;
  return <Planned state={state} wishes={wishes} wish={wish} shop={shop} missing={missing} />;
}

interface Props {
  readonly state: JobState;
  readonly wishes: ReturnType<typeof useWishes>[0];
  readonly wish: ReturnType<typeof useWishes>[1];
  readonly shop: ReturnType<typeof useShopFigures>;
  readonly missing: ReturnType<typeof useMissing>;
}

/** Causes shown beside the step; the rest is in the plan's tree. */
const SHOWN_CAUSES = 6;

function Planned({ state, wishes, wish, shop, missing: [missing, setMissing] }: Props): ReactNode {
  const { job, isReadOnly } = useSheet();
  const { checks } = useText();
  const numbers = useNumbers();
  const words = checks.next;
  const catalogue = checks.catalogue();
  const { step: nameOf, check: textOf, whole } = useCheckWords();
  const inUnits = useInUnits();
  const diameterMm = job.findings.at(-1)?.sheet.finding.diameterMm ?? undefined;
  const verification = useMemo(() => verificationFor(job, state.layout), [job, state.layout]);
  // a plan that does not know of the repair would only say it again
  const { plan, isLast, played, error } = usePlan(
    verification === undefined ? { job: state, ...(diameterMm === undefined ? {} : { diameterMm }) } : null,
  );
  const [chosen, setChosen] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const record = useRecord(state, () => {
    setChosen(null);
    heading.current?.focus();
  });
  const figure = useMemo(() => figureValues(state.changes), [state]);
  const ratePerHour = figure('shop.rate');
  const finding = job.findings.at(-1);
  const step = plan?.next;
  const verifying = verification?.kind === 'open' ? verification.checkId : undefined;
  const checkId = chosen ?? verifying ?? (step?.kind === 'check' ? step.id : undefined);
  const choose = (id: string | null): void => {
    setChosen(id);
    heading.current?.focus();
  };
  const ownPrice = (id: string) => {
    const setups = checkById(id).setups.filter((setup) => !state.setupsDone.includes(setup));
    return {
      setups,
      price: {
        minutes: figure(checkKey(id, 'minutes')) + setups.reduce((sum, setup) => sum + figure(setupKey(setup)), 0),
        waitMinutes: figure(checkKey(id, 'wait')),
        goods: figure(checkKey(id, 'consumables')) * ratePerHour,
      },
    };
  };
  return (
    <>
      <p className="quiet">
        {finding === undefined ? words.fromPriors : words.fromFinding(numbers.dateTime(finding.madeAt))}
      </p>
      {error !== null && (
        <Message isBad name={words.cannot}>
          <p>{error}</p>
          <p>{words.cannotAdvice}</p>
        </Message>
      )}
      <div className={`step stack next-step${verification === undefined ? '' : ' settled'}`}>
        <h3 tabIndex={-1} ref={heading}>
          <span className="lead">{chosen === null ? words.title : words.chosenTitle}</span>
          <span className="finding-sentence">
            {chosen !== null
              ? textOf(chosen).name
              : verification !== undefined
                ? verification.kind === 'held'
                  ? words.verified
                  : words.verify(textOf(verification.checkId).name)
                : step === undefined
                  ? words.planning
                  : step.kind === 'repair'
                    ? words.repairFirst(nameOf(step))
                    : nameOf(step)}
          </span>
        </h3>
        {chosen !== null && (
          <>
            <StepFacts {...ownPrice(chosen)} ratePerHour={ratePerHour} checkId={chosen} />
            <div className="buttons">
              <Button kind="bare" onClick={() => choose(null)}>
                {words.back}
              </Button>
            </div>
          </>
        )}
        {chosen === null && verification !== undefined && (
          <>
            {verification.kind === 'open' && (
              <StepFacts {...ownPrice(verification.checkId)} ratePerHour={ratePerHour} checkId={verification.checkId} />
            )}
            <p>
              {verification.kind === 'open'
                ? words.verifyWords(verification.what.trim().replace(/[.!?…]+$/, ''))
                : words.verifiedWords}{' '}
              <a href="#proof">{words.toProof}</a>
            </p>
          </>
        )}
        {chosen === null && step !== undefined && (
          <>
            {step.kind === 'send away' ? (
              <p>{words.sendAwayWords}</p>
            ) : (
              <StepFacts price={step} setups={step.setups} ratePerHour={ratePerHour} checkId={checkId} />
            )}
            {step.kind === 'repair' && (
              <>
                <Caution>
                  <ul>
                    {cautionsOfRepair(step.id as RepairId).map((id) => (
                      <li key={id}>{inUnits(catalogue.cautions[id])}</li>
                    ))}
                  </ul>
                  <p className="small">{words.defer}</p>
                </Caution>
                <p>
                  {words.repairWords} <a href="#repair">{words.toRepair}</a>
                </p>
              </>
            )}
          </>
        )}
        {checkId !== undefined && !isReadOnly && (
          <CheckSteps key={checkId} id={checkId} onResult={(entry) => record(checkId, entry)} />
        )}
      </div>
      {plan !== null && (
        <>
          <p>
            {words.expected(
              whole(plan.expected.minutes),
              whole((plan.expected.minutes / 60) * ratePerHour + plan.expected.goods),
              whole(figure('shop.unproven')),
            )}{' '}
            <span className="quiet">
              {plan.gap < 0.005 ? words.exact : words.gap(numbers.percent(plan.gap))}
              {isLast ? '' : ` (${words.improving})`}
            </span>
          </p>
          <div className="stack">
            <h4>{words.causes}</h4>
            {plan.causes.slice(0, SHOWN_CAUSES).map(({ id, probability }, k) => (
              <LengthBar key={id} name={catalogue.causes[id]} share={probability} isRival={k > 0} />
            ))}
          </div>
          <FailedSetups plan={plan} />
          <PlanWhy plan={plan} isLast={isLast} ratePerHour={ratePerHour} />
          <PlanAnswers plan={plan} />
          <PlanStop plan={plan} />
          {played !== null && (
            <RecordingsWorth played={played} minutesOf={(id) => figure(checkKey(id, 'minutes'))} onChoose={choose} />
          )}
          <PlanSteps tree={plan.tree} />
        </>
      )}
      {!isReadOnly && (
        <div className="no-print">
          <Circumstances wishes={wishes} onWish={wish} missing={missing} onMissing={setMissing} />
          <OtherChecks
            state={state}
            leftOut={wishes.leftOut}
            wanting={cannotBeDone({ ...wishes, missing })}
            minutesOf={(id) => figure(checkKey(id, 'minutes'))}
            onChoose={choose}
            onLeaveOut={(leftOut) => wish({ leftOut })}
          />
          <FiguresEditor
            changes={shop.changes}
            onChange={shop.change}
            error={shop.error}
            about={checkId === undefined ? `repair.${step?.id ?? ''}` : `check.${checkId}`}
            complaints={columnsOf(state.complaints, state.codes)}
            wishes={wishes}
            onWish={wish}
          />
        </div>
      )}
    </>
  );
}

/** A set-up fault that the results make likelier than it is on any day. */
const LEAST_SETUP_FAULT = 0.1;

/** What may be wrong with the test itself, beside what may be wrong with the car. */
function FailedSetups({ plan }: { readonly plan: Plan }): ReactNode {
  const { checks } = useText();
  const shown = plan.setupFaults.filter(({ probability }) => probability >= LEAST_SETUP_FAULT);
  if (shown.length === 0) return null;
  const names = checks.catalogue().setupFaults;
  return (
    <div className="stack">
      <h4>{checks.next.setupFaults}</h4>
      {shown.map(({ id, probability }) => (
        <LengthBar key={id} name={names[id]} share={probability} isRival />
      ))}
      <p className="small quiet">{checks.next.setupFaultsWords}</p>
    </div>
  );
}

/** Takes a result into the job; says why it cannot be. */
function useRecord(state: JobState, onDone: () => void): (id: string, entry: CheckEntry) => string | undefined {
  const { job, save } = useSheet();
  const { checks } = useText();
  const { check } = useCheckWords();
  const by = useWho();
  return (id, entry) => {
    try {
      const others = state.steps.filter((step) => step.id !== id);
      beliefOf({ ...state, steps: [...others, { kind: 'check', id, entry }] });
    } catch {
      return checks.next.impossible;
    }
    const { name } = check(id);
    const answer = 'outcome' in entry ? { outcome: entry.outcome } : { numbers: { ...entry.numbers } };
    save('checks', [
      ...job.checks,
      {
        id: newId(),
        at: new Date().toISOString(),
        by,
        what: name,
        result:
          'outcome' in answer
            ? checks.word(answer.outcome)
            : Object.entries(answer.numbers)
                .filter(([, text]) => text.trim() !== '')
                .map(([field, text]) => `${checks.word(field)} ${text.trim()}`)
                .join(', '),
        speaksFor: [],
        speaksAgainst: [],
        strength: 'clear',
        checkId: id,
        answer,
      },
    ]);
    announce(checks.next.recorded(name));
    onDone();
    return undefined;
  };
}
