/** What the car said in a capture, offered to be taken into the job with one press, never taken by itself. */
import type { ReactNode } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { takenCodes } from '../../jobs/record/taken-codes.ts';
import type { CaptureFacts } from '../../server/contract/recordings.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { Message } from '../kit/message.tsx';
import { newId } from '../kit/new-id.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useWho } from '../sheet/use-who.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { readingFrom } from './take-capture.ts';
import { useMonitor } from './use-monitor.ts';

interface Props {
  readonly entry: RecordingEntry;
  readonly capture: CaptureFacts;
  readonly hasSamples: boolean;
}

export function CaptureOffer({ entry, capture, hasSamples }: Props): ReactNode {
  const { monitor: text, trade } = useText();
  const { job, save, isReadOnly } = useSheet();
  const { monitor, change } = useMonitor();
  const { list, dateTime } = useNumbers();
  const by = useWho();
  const words = text.capture;
  const { status, codesRead } = capture;
  const codes = takenCodes(job.codes, capture, entry.taken);
  const taken = monitor.readings.find(({ recordingId }) => recordingId === entry.id);
  const { vin } = status;
  const ownVin = job.vehicle.vin;
  const isOtherCar = vin !== undefined && ownVin !== undefined && vin !== ownVin;
  const names = (all: readonly { readonly code: string; readonly status: keyof typeof trade.codeStatus }[]): string =>
    list(all.map((each) => `${each.code} ${trade.codeStatus[each.status]}`));
  const willTake = [
    words.parts.reading,
    ...(codes.added.length === 0 ? [] : [words.parts.added(names(codes.added))]),
    ...(codes.removed.length === 0 ? [] : [words.parts.removed(names(codes.removed))]),
    ...(vin === undefined || ownVin !== undefined ? [] : [words.parts.vin]),
  ];
  const take = (): void => {
    change((before) => ({
      ...before,
      readings: [...before.readings, readingFrom(capture, entry, { id: newId(), by })],
    }));
    if (codes.next !== job.codes) save('codes', codes.next);
    if (vin !== undefined && ownVin === undefined) save('vehicle', { ...job.vehicle, vin });
    announce(words.announced);
  };
  return (
    <div className="stack capture-said">
      <h4>{words.title}</h4>
      {!hasSamples && <p className="quiet">{words.noSamples}</p>}
      <Said capture={capture} />
      {isOtherCar && (
        <Message isBad name={words.otherCar}>
          <p>{words.otherCarWords(ownVin, vin)}</p>
        </Message>
      )}
      {taken === undefined ? (
        !isReadOnly && (
          <>
            <p className="small quiet">{words.willTake(willTake.join('; '))}</p>
            <div className="buttons">
              <Button kind={isOtherCar ? 'plain' : 'primary'} onClick={take}>
                {isOtherCar ? words.takeAllTheSame : words.take}
              </Button>
            </div>
          </>
        )
      ) : (
        <p>
          {words.taken(dateTime(taken.at))} <a href="#monitor">{words.toMonitor}</a>
        </p>
      )}
      {codesRead.length === 0 && <p className="small quiet">{words.codesNotRead}</p>}
    </div>
  );
}

function Said({ capture }: Pick<Props, 'capture'>): ReactNode {
  const { monitor: text, trade } = useText();
  const { list } = useNumbers();
  const words = text.capture;
  const { status, codes, codesRead } = capture;
  const said = [
    ...new Set(
      codes.map((each) => `${each.code} ${trade.codeStatus[each.status === 'confirmed' ? 'stored' : each.status]}`),
    ),
  ];
  const monitors = status.sinceClear?.monitors.filter(({ supported }) => supported);
  const notRun = monitors?.filter(({ complete }) => !complete).map(({ name }) => text.readiness.monitors[name]);
  return (
    <ul>
      {codesRead.length > 0 && <li>{said.length === 0 ? words.noCodes : words.codes(list(said))}</li>}
      {notRun !== undefined && <li>{notRun.length === 0 ? words.allRun : words.notRun(list(notRun))}</li>}
      {status.vin !== undefined && <li>{words.vin(status.vin)}</li>}
    </ul>
  );
}
