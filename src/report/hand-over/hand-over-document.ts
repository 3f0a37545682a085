/** The hand-over as a document of blocks, in the language, units and parts that are asked for. */
import { customerPart, ROOMS, type Room, shortened } from './customer.ts';
import { carName, deskOf } from './desk.ts';
import type { HandOverDocument } from './document.ts';
import { evidencePart } from './evidence.ts';
import type { HandOver } from './hand-over.ts';
import { inspectionPart } from './inspection-slip.ts';

const LARGEST_ROOM = ROOMS[0] as Room;

/** A slip that says nothing stands only where it alone was asked for. */
const hasSlip = ({ parts, monitor }: HandOver): boolean =>
  parts.includes('inspection') && (monitor !== undefined || parts.length === 1);

export function handOverDocument(given: HandOver, room: Room = LARGEST_ROOM): HandOverDocument {
  const desk = deskOf(given);
  const { words } = desk;
  const { shop } = given;
  const line = [shop.address, shop.telephone, shop.email].filter((part) => (part ?? '') !== '').join(', ');
  return {
    language: given.language,
    title: words.fileTitle(given.job.number, carName(desk)),
    head: [shop.name, line].map((said) => shortened(said, room.headLetters)).filter((part) => part !== ''),
    demo: given.job.demo ? words.invented : null,
    foot: `${words.jobNumber(given.job.number)} · ${carName(desk)}`,
    pageOf: words.pageOf,
    program: given.program,
    madeAt: given.madeAt,
    parts: [
      ...(given.parts.includes('customer') ? [customerPart(desk, room)] : []),
      ...(given.parts.includes('evidence') ? [evidencePart(desk)] : []),
      ...(hasSlip(given) ? [inspectionPart(desk)] : []),
    ],
  };
}
