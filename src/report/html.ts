/** The sheet as one self-contained HTML file: no script, no network, fonts inside. */

import { dataAddress } from './data-address.ts';
import { sizePlate, tracePlates } from './figures.ts';
import type { FontBytes } from './fonts.ts';
import { Markup, markup } from './markup.ts';
import { fixed } from './numbers.ts';
import { DIAMETER_CONVENTION } from './sentences.ts';
import type { Sheet } from './sheet.ts';
import { type Row, type Story, story } from './story.ts';
import { STYLE } from './style.ts';
import { drawingToSvg } from './svg.ts';

const WIDE = 700;
const NARROW = 350;

const face = (family: string, weight: number, bytes: Uint8Array): string =>
  `@font-face{font-family:'${family}';font-weight:${weight};font-display:block;src:url(${dataAddress('font/woff2', bytes)}) format('woff2')}`;

export const fontFaces = (fonts: FontBytes): string =>
  [
    face('Source Serif 4', 400, fonts.serif),
    face('Source Serif 4', 600, fonts.serifStrong),
    face('Atkinson Hyperlegible', 400, fonts.sans),
    face('Atkinson Hyperlegible', 700, fonts.sansStrong),
  ].join('\n');

const list = (items: readonly string[]): Markup | null =>
  items.length === 0 ? null : markup`<ul>${items.map((item) => markup`<li>${item}</li>`)}</ul>`;

const heading = (text: string, items: readonly string[]): Markup | null =>
  items.length === 0 ? null : markup`<h3>${text}</h3>${list(items) ?? ''}`;

const facts = (rows: readonly Row[]): Markup =>
  markup`<dl>${rows.map(([label, value]) => markup`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>`;

/** The sentence with its size and place set in the accent. */
function emphasised(sentence: string, parts: readonly string[]): Markup {
  const part = parts.find((candidate) => candidate !== '' && sentence.includes(candidate));
  if (part === undefined) return markup`${sentence}`;
  const at = sentence.indexOf(part);
  const rest = parts.filter((other) => other !== part);
  return markup`${emphasised(sentence.slice(0, at), rest)}<b>${part}</b>${emphasised(sentence.slice(at + part.length), rest)}`;
}

const section = (id: string, title: string, body: Markup | null, className = ''): Markup | null =>
  body === null || body.text === ''
    ? null
    : markup`<section aria-labelledby="${id}" class="${className}"><h2 id="${id}">${title}</h2><div>${body}</div></section>`;

/** The same figure drawn twice, for a desk and for a phone; only the fitting one is shown. */
const plate = (id: string, wide: string, narrow: string): Markup =>
  new Markup(
    `<div class="wide">${wide.replaceAll('ID', id)}</div><div class="narrow">${narrow.replaceAll('ID', `${id}n`)}</div>`,
  );

const KEY = (chosen: string, rival: string | null): Markup =>
  markup`<ul class="key"><li><svg viewBox="0 0 32 12" aria-hidden="true"><path class="dot recorded" stroke-width="2.4" d="M4 6h0M11 4h0M18 7h0M26 5h0"/></svg>recorded</li><li><svg viewBox="0 0 32 12" aria-hidden="true"><path class="fill band" d="M0 1H32V11H0Z"/><path class="pen model" d="M0 6H32"/></svg>modelled: ${chosen}, with 90 % band</li>${
    rival === null
      ? ''
      : markup`<li><svg viewBox="0 0 32 12" aria-hidden="true"><path class="pen rival" d="M0 6H32"/></svg>modelled: ${rival}</li>`
  }</ul>`;

function traces(sheet: Sheet): Markup | null {
  const wide = tracePlates(sheet, WIDE);
  const narrow = tracePlates(sheet, NARROW);
  if (wide.length === 0) return null;
  return new Markup(
    wide
      .map(({ drawing, label, pressure, chosen, rival }, i) => {
        const small = narrow[i]?.drawing ?? drawing;
        return markup`<figure><p class="small">${label}: ${pressure} against ambient</p>${plate(`trace${i}`, drawingToSvg(drawing, 'ID'), drawingToSvg(small, 'ID'))}${KEY(chosen, rival)}<figcaption>${drawing.description}</figcaption></figure>`
          .text;
      })
      .join(''),
  );
}

function size(sheet: Sheet, told: Story): Markup | null {
  const wide = sizePlate(sheet, WIDE);
  const narrow = sizePlate(sheet, NARROW);
  if (wide === null || narrow === null) return null;
  return markup`<figure>${plate('size', drawingToSvg(wide, 'ID'), drawingToSvg(narrow, 'ID'))}<figcaption>${DIAMETER_CONVENTION}</figcaption></figure>${list(told.limits) ?? ''}<p class="small">Reference sizes are marks to compare with, not a ruling; the rule that applies to this car and its date decide. ${told.limitMarks.join(' ')}</p>`;
}

const causes = (told: Story): Markup =>
  markup`<table><thead><tr><th scope="col">cause</th><th scope="col">how sure</th><td class="bar"></td><th scope="col" class="n">probability</th></tr></thead><tbody>${told.causes.map(
    (row) =>
      markup`<tr><th scope="row">${row.name}<span class="detail">${row.detail}</span></th><td class="sure">${row.certainty}</td><td class="bar" aria-hidden="true"><span><i style="width:${(row.probability * 100).toFixed(1)}%"></i></span></td><td class="n">${row.percent}</td></tr>`,
  )}</tbody></table>${heading('Two at once', told.pairs) ?? ''}`;

function evidence(told: Story): Markup {
  const table =
    told.evidence.length === 0
      ? ''
      : markup`<table><thead><tr><th scope="col">phase</th><th scope="col">what it says of the first cause, against the best rival</th><th scope="col" class="n">ln ratio</th></tr></thead><tbody>${told.evidence.map(
          (row) =>
            markup`<tr><th scope="row">${row.phase}${row.recording === '' ? '' : markup`<span class="detail">${row.recording}</span>`}</th><td>${row.words}</td><td class="n">${fixed(row.logEvidence, 1)}</td></tr>`,
        )}</tbody></table>`;
  return markup`${heading('Speaks for it', told.reasonsFor) ?? ''}${heading('Speaks against it', told.reasonsAgainst) ?? ''}${table}${told.evidenceNote === null ? '' : markup`<p class="small">${told.evidenceNote}</p>`}`;
}

export function reportHtml(sheet: Sheet, fonts: FontBytes): string {
  const told = story(sheet);
  const demo = told.isDemo ? markup`<p class="demo">Invented car and recording, for demonstration only.</p>` : '';
  const body = markup`<main>
<header><h1>${told.title}</h1><p class="sub">Fuel-vapour system, finding of ${told.madeAt} UTC.</p>${demo}</header>
${section('s-finding', 'Finding', markup`<p class="finding">${emphasised(told.technical, told.emphasis)}</p><p class="plain">For the owner: ${told.owner}</p>`, 'first') ?? ''}
${section('s-trace', 'Recording', traces(sheet)) ?? ''}
${section('s-size', 'Size', size(sheet, told)) ?? ''}
${section('s-causes', 'Causes', causes(told)) ?? ''}
${section('s-evidence', 'Evidence', evidence(told)) ?? ''}
${section('s-open', 'Not proven', list(told.notProven)) ?? ''}
${section('s-next', 'Next recording', list(told.nextRecordings)) ?? ''}
${section('s-warnings', 'Warnings', list(told.warnings)) ?? ''}
${section('s-cautions', 'Before any work', markup`<div class="caution"><p>${told.caution}</p>${list(told.cautions) ?? ''}</div>`) ?? ''}
${section('s-car', 'Car', facts(told.car)) ?? ''}
${
  section(
    's-conditions',
    'Conditions',
    new Markup(
      told.recordings
        .map(({ label, rows, remarks }) => markup`<h3>${label}</h3>${facts(rows)}${list(remarks) ?? ''}`.text)
        .join(''),
    ),
  ) ?? ''
}
${section('s-origin', 'Made from', markup`<dl class="list">${told.provenance.map(([label, value]) => markup`<dt>${label}</dt><dd>${value}</dd>`)}</dl>`) ?? ''}
</main>`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${markup`${told.title}: finding`.text}</title>
<style>${fontFaces(fonts)}${STYLE}</style></head>
<body>${body.text}</body></html>
`;
}
