/** Whether the car passes by the rule, what is missing, and how many days are left. */
import type { ReactNode } from 'react';
import { inspectionOf, newestReading, ruleOfJob, rulesOf } from '../../jobs/record/monitor-of-job.ts';
import { Caution } from '../kit/caution.tsx';
import { SelectField, TextField } from '../kit/fields.tsx';
import { withKey } from '../kit/with-key.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { fromField, toField } from './local-moment.ts';
import { useGaps } from './use-gaps.ts';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';
import { useRules } from './use-rules.ts';

const DAY_MS = 86_400_000;

export function InspectionPart(): ReactNode {
  const { monitor: text } = useText();
  const { job, isReadOnly } = useSheet();
  const { monitor, change } = useMonitor();
  const { words } = useReadiness();
  const { date } = useNumbers();
  const settings = useRules();
  const rule = ruleOfJob(job, settings);
  const { name, source } = words.rule(rule);
  const { inspectionAt } = monitor.plan;
  return (
    <div className="part">
      <h3>{text.inspection.title}</h3>
      <Verdict rule={rule} />
      <div className="fields">
        {isReadOnly ? null : (
          <>
            <SelectField
              label={text.inspection.rule}
              wide
              hint={text.inspection.ruleHint}
              value={rule.id}
              options={rulesOf(settings).map((each) => ({ value: each.id, name: words.rule(each).name }))}
              onChange={(id) => change((before) => ({ ...before, ruleId: id }))}
            />
            <TextField
              label={text.inspection.date}
              type="datetime-local"
              value={toField(inspectionAt)}
              hint={inspectionAt === undefined ? undefined : text.inspection.daysLeft(daysUntil(inspectionAt))}
              onChange={(value) =>
                change((before) => ({ ...before, plan: withKey(before.plan, 'inspectionAt', fromField(value)) }))
              }
            />
          </>
        )}
      </div>
      {isReadOnly && inspectionAt !== undefined && (
        <p>
          {text.inspection.date}: {date(inspectionAt)}. {text.inspection.daysLeft(daysUntil(inspectionAt))}
        </p>
      )}
      <p className="small quiet">{words.ruleLine(name, rule.asOf, words.ruleMark[rule.mark], source)}</p>
      <Caution>
        <p>{words.caution}</p>
        <p>{text.inspection.clearing}</p>
      </Caution>
    </div>
  );
}

/** Whole days of the calendar. */
function daysUntil(iso: string): number {
  const midnight = (at: Date): number => Date.UTC(at.getFullYear(), at.getMonth(), at.getDate());
  return Math.round((midnight(new Date(iso)) - midnight(new Date())) / DAY_MS);
}

function Verdict({ rule }: { readonly rule: Parameters<typeof inspectionOf>[2] }): ReactNode {
  const { monitor: text } = useText();
  const { job } = useSheet();
  const { words, figures } = useReadiness();
  const gaps = useGaps();
  const reading = newestReading(job);
  if (reading === undefined) return <p className="quiet">{text.inspection.needsReading}</p>;
  const inspection = inspectionOf(job, reading, rule);
  if (inspection === undefined) return <p className="warn">{gaps.needsYear}</p>;
  return (
    <>
      <p className="finding-sentence">{text.inspection.sentence(words.verdict[inspection.verdict])}</p>
      {inspection.reasons.length > 0 && (
        <ul>
          {inspection.reasons.map((reason) => (
            <li key={reason.kind}>{text.inspection.sentence(words.reason(reason, figures))}</li>
          ))}
        </ul>
      )}
      {inspection.missing.length > 0 && (
        <>
          <p>{text.inspection.missing}:</p>
          <ul>
            {inspection.missing.map((gap) => (
              <li key={gap.kind}>{text.inspection.sentence(words.gap(gap))}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
