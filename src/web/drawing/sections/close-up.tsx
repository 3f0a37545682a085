import type { ReactNode } from 'react';
import type { PartId } from '../../../system/parts.ts';
import { useText } from '../../text/language.ts';
import { CanisterSection } from './canister-section.tsx';
import { CapSection } from './cap-section.tsx';
import { PurgeValveSection, VentValveSection } from './valve-sections.tsx';

export const HAS_CLOSE_UP: readonly PartId[] = ['purgeValve', 'ventValve', 'canister', 'carbonBed', 'cap'];

/** The section drawing of a part, where there is one; valves as they stand now. */
export function CloseUp({ part, isOpen }: { readonly part: PartId; readonly isOpen: boolean }): ReactNode {
  const words = useText().drawing;
  const places = words.sections;
  const title = `${words.choose.closeUp}, ${words.parts[part].replaceAll('\u00ad', '')}`;
  switch (part) {
    case 'purgeValve':
      return <PurgeValveSection title={title} places={places.purgeValve} isOpen={isOpen} />;
    case 'ventValve':
      return <VentValveSection title={title} places={places.ventValve} isOpen={isOpen} />;
    case 'canister':
    case 'carbonBed':
      return <CanisterSection title={title} places={places.canister} />;
    case 'cap':
      return <CapSection title={title} places={places.cap} />;
    default:
      return null;
  }
}
