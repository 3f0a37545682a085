import { type ReactNode, useMemo } from 'react';
import type { LayoutId } from '../../system/car.ts';
import { faultKindsOf } from '../../system/faults/catalogue.ts';
import type { Fault, FaultKind } from '../../system/faults/fault.ts';
import type { Network } from '../../system/network.ts';
import type { LeakPlace } from '../../system/parameters.ts';
import type { PartId } from '../../system/parts.ts';
import { PartWords } from '../drawing/parts/part-words.tsx';
import type { Playback } from '../drawing/player/playback.ts';
import type { RunView } from '../drawing/state/run-view.ts';
import { Button } from '../kit/button.tsx';
import { SelectField } from '../kit/fields.tsx';
import { useText } from '../text/language.ts';

interface Props {
  readonly network: Network;
  readonly layout: LayoutId;
  readonly chosen: PartId;
  readonly onChoose: (part: PartId) => void;
  readonly view: RunView | undefined;
  readonly playback: Playback;
  readonly fault: Fault | undefined;
  readonly onFault: (fault: Fault | undefined) => void;
}

/** Parts that carry no gas of their own, so that the network does not list them. */
const BESIDE: readonly PartId[] = ['levelSender', 'temperatureSensor', 'ventFilter', 'purgeLine'];

export function partsOf(network: Network): readonly PartId[] {
  const parts = new Set<PartId>();
  for (const { part } of network.spaces) parts.add(part);
  for (const { part } of network.passages) parts.add(part);
  for (const { part } of network.sensors) parts.add(part);
  for (const part of BESIDE) parts.add(part);
  if (network.transferPumps.length > 0) parts.add('transferPump');
  if (network.spaces.some((s) => s.id === 'tee')) parts.add('ejector');
  // A pump module's change-over valve is its vent valve.
  if (parts.has('changeoverValve')) parts.delete('ventValve');
  return [...parts];
}

/** Faults that can sit at a part, holes at its places among them. */
function faultsAt(part: PartId, layout: LayoutId, network: Network): readonly { kind: FaultKind; place?: LeakPlace }[] {
  const isPart = (other: PartId | undefined): boolean =>
    other === part || (other === 'ventValve' && part === 'changeoverValve');
  return faultKindsOf(layout).flatMap((kind) => {
    const places = (kind.places ?? []).filter((place) =>
      isPart(network.passages.find((p) => p.id === `leak.${place}`)?.part),
    );
    if (places.length > 0) return places.map((place) => ({ kind, place }));
    return kind.places === undefined && isPart(kind.part) ? [{ kind }] : [];
  });
}

/** The chosen part: what is known of it, and its faults to be put in. */
export function PartChoice({ network, layout, chosen, onChoose, view, playback, fault, onFault }: Props): ReactNode {
  const text = useText();
  const words = text.drawing;
  const parts = useMemo(() => partsOf(network), [network]);
  const part = parts.includes(chosen) ? chosen : parts[0]!;
  const faults = faultsAt(part, layout, network);
  const plain = (name: string): string => name.replaceAll('\u00ad', '');
  return (
    <div className="part-choice">
      <p className="quiet no-print">{words.part.pick}</p>
      <div className="no-print list">
        <SelectField
          label={words.part.list}
          value={part}
          options={parts.map((p) => ({ value: p, name: plain(words.parts[p]) }))}
          onChange={onChoose}
        />
      </div>
      <PartWords part={part} view={view} playback={playback}>
        {faults.length > 0 && (
          <div className="no-print">
            <p className="small quiet">{words.choose.byPart(plain(words.parts[part]))}</p>
            <div className="buttons">
              {faults.map(({ kind, place }) => {
                const isIn = fault?.kind === kind.kind && fault.place === place;
                return (
                  <Button
                    key={`${kind.kind} ${place ?? ''}`}
                    aria-pressed={isIn}
                    onClick={() =>
                      onFault(isIn ? undefined : { kind: kind.kind, ...(place === undefined ? {} : { place }) })
                    }
                  >
                    {words.faults[kind.kind] ?? kind.words}
                    {faults.length > 1 && place !== undefined ? `, ${words.places[place]}` : ''}
                  </Button>
                );
              })}
            </div>
          </div>
        )}
      </PartWords>
    </div>
  );
}
