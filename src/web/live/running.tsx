/** A recording that runs: its line, its trace, what is done, the finding so far, codes; and its end. */
import { type ReactNode, useMemo, useState } from 'react';
import type { LiveKept, LiveStatus } from '../../server/contract/live.ts';
import type { LayoutId } from '../../system/car.ts';
import { changeLive } from '../api/live.ts';
import { Button } from '../kit/button.tsx';
import { Fold } from '../kit/fold.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { Section } from '../kit/section.tsx';
import { channelLanes } from '../recording/channel-lanes.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { ChannelTable } from './channel-table.tsx';
import { CodesPart } from './codes-part.tsx';
import { DiscardDialog } from './discard-dialog.tsx';
import { KeepDialog } from './keep-dialog.tsx';
import { LiveCautions } from './live-cautions.tsx';
import { LiveChart } from './live-chart.tsx';
import { LiveFacts } from './live-facts.tsx';
import { LiveFinding } from './live-finding.tsx';
import { PhaseList } from './phase-list.tsx';
import { asProcedure, ProcedureChoice, type Said } from './procedure-choice.tsx';
import { useTimeWords } from './time-words.ts';
import { useLive } from './use-live.ts';
import { VentMarks } from './vent-marks.tsx';

/** Where the vent valve is shut for a while by design; elsewhere there is nothing to mark. */
const VENT_SHUTS: readonly LiveStatus['procedure'][] = ['vacuum-draw', 'engine-off', 'sealed-hold', null];

interface Props {
  readonly first: LiveStatus;
  /** Of the job's car, where it is known. */
  readonly layout: LayoutId | undefined;
  readonly canChange: boolean;
  readonly onKept: (kept: LiveKept) => void;
  readonly onDiscarded: () => void;
  /** It was ended elsewhere: what is here now is asked for anew. */
  readonly onGone: () => void;
}

export function Running({ first, layout, canChange, onKept, onDiscarded, onGone }: Props): ReactNode {
  const { live: text, recording, trade } = useText();
  const { fixed } = useNumbers();
  const units = useUnits();
  const time = useTimeWords();
  const [{ status, data, follow, over, isLost, turn }, setStatus] = useLive(first);
  const [asking, setAsking] = useState<'keep' | 'discard' | null>(null);
  const [error, setError] = useState<unknown>(null);
  const ventShut = follow?.ventShut ?? [];
  // biome-ignore lint/correctness/useExhaustiveDependencies: `turn` says that there are more rows
  const { order, source } = useMemo(() => data.drawn(ventShut, status.pauses), [data, turn]);
  const { lanes } = useMemo(
    () => channelLanes(order, source.columns, recording, units),
    [order, source, recording, units],
  );
  const phases = follow?.phases ?? [];
  const close = (): void => setAsking(null);
  const say = async (said: Said): Promise<void> => {
    setError(null);
    try {
      setStatus((await changeLive(status.jobId, { procedure: asProcedure(said) })).live);
    } catch (problem) {
      setError(problem);
    }
  };
  if (over !== null)
    return (
      <Message>
        <p>{text.over[over.how]}</p>
        <div className="buttons">
          <Button onClick={onGone}>{text.over.again}</Button>
        </div>
      </Message>
    );
  return (
    <>
      {isLost && (
        <Message isBad isLoud>
          <p>{text.lost}</p>
        </Message>
      )}
      <Section id="state" name={text.facts.state}>
        <LiveFacts status={status} />
        {canChange && (
          <div className="buttons">
            <Button kind="primary" onClick={() => setAsking('keep')}>
              {text.keep.button}
            </Button>
            <Button kind="bare" onClick={() => setAsking('discard')}>
              {text.discard.button}
            </Button>
          </div>
        )}
      </Section>
      <Section id="trace" name={text.trace.title}>
        {lanes.length === 0 ? (
          <p className="quiet">{text.trace.waiting}</p>
        ) : (
          <>
            <LiveChart source={source} lanes={lanes} phases={phases} />
            {ventShut.length > 0 && (
              <p className="small quiet">
                {status.ventMarks.length > 0 ? text.trace.ventMarked : text.trace.ventDerived}
              </p>
            )}
          </>
        )}
      </Section>
      <Section id="finding" name={text.finding.title} isFirst>
        <LiveFinding status={status} follow={follow} />
      </Section>
      <Section id="phases" name={text.phases.title}>
        <PhaseList phases={phases} isOver={status.state === 'stopped'} />
      </Section>
      <Section id="what" name={text.what.title}>
        <div className="stack">
          <Fold
            label={text.what.legend}
            words={status.procedure === null ? text.what.none : trade.procedures[status.procedure]}
            isOpenAtFirst={status.procedure === null}
          >
            <p>{text.what.words}</p>
            <ProcedureChoice
              label={text.what.legend}
              value={status.procedure ?? 'none'}
              disabled={!canChange}
              onChange={(said) => void say(said)}
            />
          </Fold>
          <LiveCautions
            said={status.procedure ?? 'none'}
            layout={status.port.kind === 'simulated' ? status.port.layout : layout}
          />
          {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
        </div>
      </Section>
      {canChange && VENT_SHUTS.includes(status.procedure) && (
        <Section id="vent" name={text.vent.title}>
          <VentMarks status={status} onStatus={setStatus} />
        </Section>
      )}
      <Section id="channels" name={text.channels.title}>
        <ChannelTable channels={status.channels} data={data} />
      </Section>
      <Section id="codes" name={text.codes.title}>
        <CodesPart status={status} canChange={canChange} />
      </Section>
      {asking === 'keep' && (
        <KeepDialog of={status} title={text.keep.title} go={text.keep.go} onClose={close} onKept={onKept} />
      )}
      {asking === 'discard' && (
        <DiscardDialog
          of={status}
          words={text.discard.words(time(status.durationS), fixed(status.samples, 0))}
          go={text.discard.go}
          onClose={close}
          onDiscarded={onDiscarded}
        />
      )}
    </>
  );
}
