/** The evidence pack: all that a colleague or an inspector may ask for. */
import { carName, type Desk, dayAndMinute, inUnits } from './desk.ts';
import { listed, type Part, type Section } from './document.ts';
import {
  checksSection,
  codesSection,
  filesSection,
  jobSection,
  notesSection,
  originSection,
  repairsSection,
} from './evidence-job.ts';
import { proofSection } from './evidence-proof.ts';
import {
  causesSection,
  conditionsSection,
  evidenceSection,
  recordingsSection,
  sizesSection,
} from './evidence-recordings.ts';
import { notVerified } from './not-verified.ts';

export function evidencePart(desk: Desk): Part {
  const { given, words } = desk;
  const { sections } = words;
  const isSealed = given.car?.layout === 'sealed-tank';
  const all: (Section | null)[] = [
    jobSection(desk),
    recordingsSection(desk),
    sizesSection(desk),
    causesSection(desk),
    evidenceSection(desk),
    checksSection(desk),
    repairsSection(desk),
    proofSection(desk),
    { title: sections.notVerified, blocks: listed(notVerified(desk)) },
    codesSection(desk),
    conditionsSection(desk),
    notesSection(desk),
    filesSection(desk),
    originSection(desk),
    {
      title: sections.before,
      blocks: [
        {
          kind: 'caution',
          lead: words.cautionLead,
          items: (isSealed ? [words.sealedTankCaution, ...words.cautions] : words.cautions).map((caution) =>
            inUnits(desk, caution),
          ),
        },
      ],
    },
    { title: sections.law, blocks: listed(words.deferral) },
    { title: sections.signatures, blocks: [{ kind: 'signatures', lines: words.signatures }] },
  ];
  return {
    id: 'evidence',
    gap: 10,
    title: words.evidenceTitle,
    subtitle: words.evidenceSubtitle(carName(desk), `${dayAndMinute(given.madeAt)} UTC`),
    sections: all.filter((section) => section !== null),
  };
}
