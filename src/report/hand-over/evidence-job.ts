/** Evidence that comes from hands and eyes: the car, checks, repairs, codes, notes, and what all of it was made from. */

import { printedUnit } from '../../units/printed-unit.ts';
import type { Desk } from './desk.ts';
import { carName, day, dayAndMinute } from './desk.ts';
import { type Block, type Picture, type Section, text } from './document.ts';
import type { HandOverCode, HandOverFinding } from './hand-over.ts';
import { sentenceOf, upperFirst } from './outcome.ts';

type Row = readonly [string, string];
const rowsOf = (rows: readonly (readonly [string, string | undefined])[]): readonly Row[] =>
  rows.flatMap(([label, value]) => (value === undefined || value === '' ? [] : [[label, value] as const]));

export function jobSection(desk: Desk): Section {
  const { given, words, q } = desk;
  const { facts } = words;
  const { car, shop, vehicle } = given;
  const sensor = car?.pressureSensor;
  const reid = car?.fuel?.reidVapourPressurePa;
  return {
    title: words.sections.job,
    blocks: [
      {
        kind: 'facts',
        rows: rowsOf([
          [facts.job, words.jobNumber(given.job.number)],
          [facts.opened, `${dayAndMinute(given.job.openedAt)} UTC`],
          [facts.made, `${dayAndMinute(given.madeAt)} UTC`],
          [
            facts.shop,
            [shop.name, shop.address, shop.telephone, shop.email].filter((part) => (part ?? '') !== '').join(', '),
          ],
          [facts.technician, given.technician],
          [facts.vehicle, carName(desk)],
          [facts.owner, vehicle.owner],
          [facts.vin, vehicle.vin],
          [facts.modelYear, vehicle.modelYear === undefined ? undefined : String(vehicle.modelYear)],
          [
            facts.odometer,
            vehicle.odometerKm === undefined ? undefined : words.kilometres(q.number(vehicle.odometerKm, 0)),
          ],
          [facts.layout, car === null ? words.notGiven : words.layouts[car.layout]],
          [facts.filler, car?.filler === undefined ? undefined : words.filler[car.filler]],
          [facts.tank, car?.tankVolumeM3 === undefined ? words.notGiven : q.litres(car.tankVolumeM3)],
          [
            facts.sensor,
            sensor === undefined
              ? words.notGiven
              : `${q.pressure(sensor.minGaugePa)} ${words.numbers.to} ${q.pressure(sensor.maxGaugePa)}`,
          ],
          [facts.reid, reid === undefined ? words.notGiven : q.airPressureRange(reid)],
          [facts.complaintKinds, given.complaint.types.map((type) => words.complaints[type]).join('; ')],
          [facts.complaintWords, given.complaint.words],
        ]),
      },
    ],
  };
}

export function checksSection({ given, words, q }: Desk): Section {
  const { facts, sections } = words;
  if (given.checks.length === 0) return { title: sections.checks, blocks: [text('body', words.noChecks)] };
  const causes = (ids: HandOverCheckCauses): string => ids.map((id) => words.causes[id].name).join(', ');
  return {
    title: sections.checks,
    blocks: [
      {
        kind: 'table',
        columns: [
          { title: `${facts.time}, ${facts.who}`, share: 0.2 },
          { title: facts.check, share: 0.27 },
          { title: facts.result, share: 0.28 },
          { title: facts.speaks, share: 0.25 },
        ],
        rows: given.checks.map((check) => [
          `${dayAndMinute(check.at)}, ${check.by}`,
          check.what,
          [
            check.result,
            check.measured === undefined
              ? ''
              : `${measured(q, check.measured.value)} ${printedUnit(check.measured.unit)}`,
          ]
            .filter((part) => part !== '')
            .join(' '),
          [
            check.speaksFor.length === 0
              ? ''
              : `${words.strength[check.strength]} ${words.speaksFor}: ${causes(check.speaksFor)}`,
            check.speaksAgainst.length === 0
              ? ''
              : `${words.strength[check.strength]} ${words.speaksAgainst}: ${causes(check.speaksAgainst)}`,
          ]
            .filter((part) => part !== '')
            .join('; '),
        ]),
      },
    ],
  };
}
type HandOverCheckCauses = Desk['given']['checks'][number]['speaksFor'];

/** As written down: no more decimals than were given. */
const measured = (q: Desk['q'], value: number): string => q.number(value, (String(value).split('.')[1] ?? '').length);

export function repairsSection({ given, words, q }: Desk): Section {
  const { facts, sections } = words;
  const blocks = given.repairs.flatMap((repair): Block[] => {
    const minutes = repair.minutes === undefined ? '' : words.minutes(q.number(repair.minutes, 0));
    const causes = repair.addresses.map((id) => words.causes[id].name).join(', ');
    return [
      {
        kind: 'heading',
        text: [`${dayAndMinute(repair.at)} UTC`, repair.by, minutes].filter((part) => part !== '').join(', '),
      },
      text('body', repair.what),
      ...(causes === '' ? [] : [text('quiet', words.meantToRemove(causes))]),
      ...(repair.parts.length === 0
        ? []
        : [
            {
              kind: 'table' as const,
              columns: [
                { title: facts.part, share: 0.55 },
                { title: facts.partNumber, share: 0.28 },
                { title: facts.price, share: 0.17, align: 'right' as const },
              ],
              rows: repair.parts.map(({ name, number, price }) => [
                name,
                number ?? words.notGiven,
                price === undefined ? '' : q.number(price, 2),
              ]),
            },
          ]),
    ];
  });
  return { title: sections.repairs, blocks: blocks.length === 0 ? [text('body', words.noRepairs)] : blocks };
}

export function codesSection({ given, words }: Desk): Section {
  const { facts, sections } = words;
  const { before, after } = given.codes;
  const names = [...new Set([...before, ...(after ?? [])].map(({ code }) => code))];
  if (names.length === 0) return { title: sections.codes, blocks: [text('body', words.noCodes)] };
  const status = (codes: readonly HandOverCode[] | null, name: string): string => {
    if (codes === null) return words.codesAfterNotRead;
    const found = codes.filter(({ code }) => code === name).map((code) => words.codeStatus[code.status]);
    return found.length === 0 ? words.codeAbsent : found.join(', ');
  };
  const frames = (codes: readonly HandOverCode[], side: string): readonly Block[] =>
    codes.flatMap(({ code, freezeFrame }): Block[] =>
      freezeFrame === undefined || freezeFrame.length === 0
        ? []
        : [
            { kind: 'heading', text: upperFirst(`${facts.freezeFrame} ${code}, ${side}`) },
            {
              kind: 'facts',
              rows: freezeFrame.map(({ name, value, unit }) => [
                words.frameName(name),
                unit === undefined ? value : `${value} ${unit}`,
              ]),
            },
          ],
    );
  return {
    title: sections.codes,
    blocks: [
      {
        kind: 'table',
        columns: [
          { title: facts.code, share: 0.12 },
          { title: facts.meaning, share: 0.4 },
          { title: facts.before, share: 0.24 },
          { title: facts.after, share: 0.24 },
        ],
        rows: names.map((name) => [
          name,
          words.codeMeanings[name] ?? words.otherCode,
          status(before, name),
          status(after, name),
        ]),
      },
      ...frames(before, words.figure.before),
      ...frames(after ?? [], words.figure.after),
      text('quiet', words.codesAsRead),
    ],
  };
}

export function notesSection({ given, words }: Desk): Section | null {
  if (given.notes.length === 0) return null;
  return {
    title: words.sections.notes,
    blocks: given.notes.flatMap(({ at, by, text: said }): Block[] => [
      text('quiet', `${dayAndMinute(at)} UTC, ${by}`),
      text('body', said),
    ]),
  };
}

export function filesSection({ given, words }: Desk): Section | null {
  const { attachments } = given;
  if (attachments.length === 0) return null;
  const pictures = attachments.flatMap(({ fileName, caption, at, picture }): Picture[] =>
    picture === undefined
      ? []
      : [
          {
            shown: picture,
            alt: caption === '' ? words.photo(fileName) : caption,
            caption: [sentenceOf(caption), `${fileName}, ${day(at)}`].filter((part) => part !== '').join(' '),
          },
        ],
  );
  return {
    title: words.sections.files,
    blocks: [
      ...(pictures.length === 0 ? [] : [{ kind: 'pictures' as const, items: pictures }]),
      {
        kind: 'facts',
        rows: attachments.map(({ fileName, caption, sha256, at, picture }) => [
          fileName,
          // What stands under its picture is not said twice.
          [picture === undefined ? `${sentenceOf(caption)} ${day(at)}.`.trim() : '', `SHA-256 ${sha256}`]
            .filter((part) => part !== '')
            .join(' '),
        ]),
      },
    ],
  };
}

export function originSection({ given, words }: Desk): Section {
  const { facts } = words;
  const finding = (found: HandOverFinding | null): string | undefined =>
    found === null
      ? undefined
      : words.findingLine(dayAndMinute(found.madeAt), found.program, found.recordings.join(', '), found.outdated);
  return {
    title: words.sections.origin,
    blocks: [
      {
        kind: 'facts',
        rows: rowsOf([
          [facts.program, given.program],
          [facts.findingBefore, finding(given.findings.before)],
          [facts.findingAfter, finding(given.findings.after)],
          ...given.recordings.map(({ fileName, sha256, bytes, receivedAt }): [string, string] => [
            fileName,
            `SHA-256 ${sha256}, ${words.bytes(bytes)}, ${facts.received} ${dayAndMinute(receivedAt)} UTC`,
          ]),
        ]),
      },
    ],
  };
}
