import { type ReactNode, useMemo, useState } from 'react';
import type { Finding } from '../../diagnosis/finding.ts';
import type { Job, JobFinding, RecordingEntry } from '../../jobs/record/job.ts';
import type { Car } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { PartId } from '../../system/parts.ts';
import { SelectField } from '../kit/fields.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import type { DrawingPanelProps } from '../sheet/slots.ts';
import { type Playable, playableOn } from '../simulation/procedures.ts';
import { useText } from '../text/language.ts';
import { CarDrawing, type CarDrawn } from './car-drawing.tsx';
import { faultOfCause } from './cause-fault.ts';
import { useRecorded } from './recorded/use-recorded.ts';
import './picture/picture.css';
import './player/player.css';

/** Beside the sheet: the car's own system, playing what was recorded, with what the finding says is wrong with it. */
export function DrawingPanel(_: DrawingPanelProps): ReactNode {
  const { job } = useSheet();
  const text = useText();
  if (job.car === null) {
    return (
      <>
        <h2>{text.drawing.title}</h2>
        <p className="quiet">{text.drawing.panel.noCar}</p>
      </>
    );
  }
  return <CarPanel key={job.car.layout} car={job.car} job={job} />;
}

/** What is played: a recording of the job, or a procedure of the layout on a mild day. */
type Choice = { readonly entry: RecordingEntry } | { readonly procedure: Playable };
const choiceKey = (choice: Choice): string => ('entry' in choice ? `r ${choice.entry.id}` : `p ${choice.procedure}`);

const NO_FAULTS: readonly Fault[] = [];

const isOf = (made: JobFinding | undefined, { sha256 }: RecordingEntry): boolean =>
  made?.sheet.recordings.some((recording) => recording.sha256 === sha256) ?? false;

function CarPanel({ car, job }: { readonly car: Car; readonly job: Job }): ReactNode {
  const text = useText();
  const words = text.drawing;
  const choices: readonly Choice[] = [
    ...job.recordings.filter((entry) => entry.useInFinding).map((entry) => ({ entry })),
    ...playableOn(car.layout).map((procedure) => ({ procedure })),
  ];
  const [chosenKey, setChosenKey] = useState<string>();
  const [chosenPart, setChosenPart] = useState<PartId>();
  const [tried, setTried] = useState<{ readonly fault: Fault | undefined }>();
  const choice =
    choices.find((each) => choiceKey(each) === chosenKey) ??
    choices.find((each) => 'entry' in each && isOf(job.findings.at(-1), each.entry)) ??
    choices[0]!;
  // What was found in this recording; an older one may have told of another car, before its repair.
  const made =
    ('entry' in choice ? job.findings.findLast((each) => isOf(each, choice.entry)) : undefined) ?? job.findings.at(-1);
  const finding = made?.sheet.finding as Finding | undefined;
  const first = finding?.verdict === 'fault' ? finding.causes[0] : undefined;
  const found = useMemo(() => (first === undefined ? undefined : faultOfCause(first, car.layout)), [first, car.layout]);
  const foundFaults = useMemo(() => (found === undefined ? NO_FAULTS : [found.fault]), [found]);
  const shared = {
    car,
    found,
    isUndrawn: finding?.verdict === 'fault' && found === undefined,
    tried,
    onTry: setTried,
    chosenPart,
    onChoosePart: setChosenPart,
  };
  return (
    <div className="player">
      <div>
        <h2>{words.title}</h2>
        <div className="no-print">
          <SelectField
            label={words.panel.played}
            value={choiceKey(choice)}
            options={choices.map((each) => ({
              value: choiceKey(each),
              name:
                'entry' in each
                  ? words.panel.asRecorded(each.entry.label)
                  : words.panel.onMildDay(words.playable[each.procedure]),
            }))}
            onChange={(key) => {
              setChosenKey(key);
              setTried(undefined);
            }}
          />
        </div>
      </div>
      {'entry' in choice ? (
        <RecordedDrawing key={choice.entry.id} entry={choice.entry} foundFaults={foundFaults} {...shared} />
      ) : (
        <CarDrawing procedure={choice.procedure} {...shared} />
      )}
    </div>
  );
}

interface RecordedProps extends CarDrawn {
  readonly entry: RecordingEntry;
  readonly foundFaults: readonly Fault[];
}

function RecordedDrawing({ entry, foundFaults, ...shared }: RecordedProps): ReactNode {
  const words = useText().drawing.panel;
  const state = useRecorded(entry, shared.car, foundFaults);
  const plain = playableOn(shared.car.layout);
  const noted = entry.facts?.procedure;
  const procedure = plain.find((p) => p === noted) ?? plain[0]!;
  if (state.state === 'loading') return <p className="small quiet">{words.reading}</p>;
  if (state.state === 'there') {
    const { recorded } = state;
    return <CarDrawing procedure={recorded.event.procedure} recorded={recorded} {...shared} />;
  }
  return (
    <>
      <p className="small quiet">{state.state === 'failed' ? words.notRead : words.notPlayable}</p>
      <CarDrawing procedure={procedure} {...shared} />
    </>
  );
}
