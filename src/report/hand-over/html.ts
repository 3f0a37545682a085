/** The hand-over as one self-contained HTML file: no script, no network, fonts inside, set for print as well. */

import { dataAddress } from '../data-address.ts';
import type { FontBytes } from '../fonts.ts';
import { fontFaces } from '../html.ts';
import { Markup, markup } from '../markup.ts';
import { STYLE } from '../style.ts';
import { drawingToSvg } from '../svg.ts';
import type { Bar, Block, HandOverDocument, Part, Section } from './document.ts';
import type { HandOver } from './hand-over.ts';
import { handOverDocument } from './hand-over-document.ts';

const WIDE = 700;
const NARROW = 350;

const HAND_OVER_STYLE = `
.head{color:var(--quiet)}
.head p:first-child{color:var(--ink);font-weight:700}
.quote{font:400 1.125rem/1.4 'Source Serif 4',serif;border-left:2px solid var(--rule);padding-left:.9rem;white-space:pre-line}
.lead{font:600 1.375rem/1.25 'Source Serif 4',serif}
.strong{font-weight:700}
.warn{color:var(--warn);font-weight:700}
.body{white-space:pre-line}
.part+.part{border-top:2px solid var(--ink);margin-top:2.5rem;padding-top:2.5rem}
.part>header{border-top:0}
.part h2{font:600 1.75rem/1.22 'Source Serif 4',serif;margin:.75rem 0 0}
dl.rows{display:block}
dl.rows>div{display:grid;grid-template-columns:minmax(9rem,14rem) minmax(0,1fr);gap:.2rem 1.25rem;padding:.25rem 0}
dl.rows dd{white-space:pre-line}
.scroll{overflow-x:auto}
dt,dd,p,li,h2,h4,figcaption,td,th{overflow-wrap:anywhere}
.scroll th{overflow-wrap:break-word}
td.r,th.r{text-align:right;padding-right:0}
.pictures{display:grid;grid-template-columns:repeat(auto-fill,minmax(15rem,1fr));gap:1.25rem;align-items:start}
.pictures figure{margin:0}
.pictures img{display:block;max-width:100%;width:auto;height:auto;max-height:22rem;border:1px solid var(--rule)}
.sign{display:grid;grid-template-columns:repeat(auto-fit,minmax(14rem,1fr));gap:3.5rem 2rem;margin-top:3rem}
.sign p{border-top:1px solid var(--ink);padding-top:.35rem;margin:0}
.foot{color:var(--quiet);border-top:1px solid var(--rule);padding-top:.75rem;font-size:.9375rem}
@media (max-width:44rem){dl.rows>div{grid-template-columns:1fr}}
@media screen and (max-width:44rem){.scroll table{min-width:32rem}}
@media print{.part+.part{break-before:page;border-top:0;margin-top:0;padding-top:0}.sign,.pictures figure{break-inside:avoid}.scroll{overflow:visible}
.bar i{border:1px solid #000}}
`;

const list = (items: readonly string[]): Markup => markup`<ul>${items.map((item) => markup`<li>${item}</li>`)}</ul>`;

const bar = ({ name, detail, certainty, probability, percent }: Bar): Markup =>
  markup`<tr><th scope="row">${name}<span class="detail">${detail}</span></th><td class="sure">${certainty}</td><td class="bar" aria-hidden="true"><span><i style="width:${(probability * 100).toFixed(1)}%"></i></span></td><td class="n">${percent}</td></tr>`;

function block(item: Block, id: string): Markup {
  switch (item.kind) {
    case 'text':
      return markup`<p class="${item.tone === 'quiet' ? 'small' : item.tone}">${item.text}</p>`;
    case 'heading':
      return markup`<h4>${item.text}</h4>`;
    case 'list':
      return list(item.items);
    case 'facts':
      return markup`<dl class="rows">${item.rows.map(([label, value]) => markup`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>`;
    case 'table': {
      const side = (i: number): string => (item.columns[i]?.align === 'right' ? 'r' : '');
      return markup`<div class="scroll" tabindex="0" role="group" aria-label="${item.columns[0]?.title ?? ''}"><table><thead><tr>${item.columns.map(({ title }, i) => markup`<th scope="col" class="${side(i)}">${title}</th>`)}</tr></thead><tbody>${item.rows.map(
        (row) =>
          markup`<tr>${row.map((cell, i) => (i === 0 ? markup`<th scope="row">${cell}</th>` : markup`<td class="${side(i)}">${cell}</td>`))}</tr>`,
      )}</tbody></table></div>`;
    }
    case 'bars':
      return markup`<table><tbody>${item.rows.map(bar)}</tbody></table>`;
    case 'figure': {
      const wide = item.draw(WIDE);
      return markup`<figure><div class="wide">${new Markup(drawingToSvg(wide, id))}</div><div class="narrow">${new Markup(drawingToSvg(item.draw(NARROW), `${id}n`))}</div><figcaption>${item.key} ${wide.description}</figcaption></figure>`;
    }
    case 'pictures':
      return markup`<div class="pictures">${item.items.map(
        ({ shown, alt, caption }) =>
          markup`<figure><img src="${dataAddress(shown.mediaType, shown.bytes)}" alt="${alt}" width="${shown.widthPx}" height="${shown.heightPx}"><figcaption>${caption}</figcaption></figure>`,
      )}</div>`;
    case 'caution':
      return markup`<div class="caution"><p>${item.lead}</p>${item.items.length === 0 ? '' : list(item.items)}</div>`;
    case 'signatures':
      return markup`<div class="sign">${item.lines.map((line) => markup`<p>${line}</p>`)}</div>`;
  }
}

/** Named with its part: customer's page and evidence have sections of one name. */
const section = ({ title, blocks }: Section, id: string, part: string): Markup =>
  markup`<section aria-labelledby="${part}-title ${id}"><h3 id="${id}">${title}</h3><div>${blocks.map((item, i) => block(item, `${id}-${i}`))}</div></section>`;

const part = ({ id, title, subtitle, sections }: Part, first: Markup): Markup =>
  markup`<div class="part" id="${id}"><header>${first}<h2 id="${id}-title">${title}</h2><p class="sub">${subtitle}</p></header>${sections.map((each, i) => section(each, `${id}-${i}`, id))}</div>`;

/** The document as a page. */
export function documentHtml(document: HandOverDocument, fonts: FontBytes): string {
  const head = markup`<div class="head">${document.head.map((line) => markup`<p>${line}</p>`)}</div>${document.demo === null ? '' : markup`<p class="demo">${document.demo}</p>`}`;
  const body = markup`<main><h1>${document.title}</h1>${document.parts.map((each, i) => part(each, i === 0 ? head : markup``))}<p class="foot">${document.foot} · ${document.program}</p></main>`;
  return `<!doctype html>
<html lang="${document.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${markup`${document.title}`.text}</title>
<style>${fontFaces(fonts)}${PART_STYLE}${HAND_OVER_STYLE}</style></head>
<body>${body.text}</body></html>
`;
}

/** The finding's style names sections with h2; here a part is h2 and a section h3, so that one outline holds. */
const PART_STYLE = STYLE.replace(/\bh3\b/g, 'h4').replace(/\bh2\b/g, 'h3');

export const handOverHtml = (given: HandOver, fonts: FontBytes): string => documentHtml(handOverDocument(given), fonts);
