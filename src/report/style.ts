/** The look of the sheet: paper, ink, one accent, one warning colour; light, dark and print are three designs. */

/** Contrast of every text colour on its ground is at least 4.5:1 (WCAG 2.2 AA); the browser test measures it. */
export const LIGHT = {
  ground: '#e9e7dd',
  paper: '#fbfaf5',
  ink: '#1d1f24',
  quiet: '#595b61',
  rule: '#cfccbf',
  shade: '#f0eee3',
  accent: '#2b3f8c',
  band: '#c9cfe8',
  rival: '#6f6a5c',
  rivalBand: '#e6e3d6',
  warn: '#8f3316',
} as const;

const DARK: Readonly<Record<keyof typeof LIGHT, string>> = {
  ground: '#0c0d10',
  paper: '#17191d',
  ink: '#eae8e0',
  quiet: '#a5a69f',
  rule: '#3a3c42',
  shade: '#20232a',
  accent: '#a9b8ff',
  band: '#343d63',
  rival: '#a29c8a',
  rivalBand: '#2b2a27',
  warn: '#f0a184',
};

const variables = (colours: Readonly<Record<keyof typeof LIGHT, string>>): string =>
  Object.entries(colours)
    .map(([name, value]) => `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}:${value}`)
    .join(';');

/** How the pens and letters of a figure look. */
const FIGURE_STYLE = `.pen{fill:none;stroke-linejoin:round;vector-effect:non-scaling-stroke}
.axis,.command{stroke:var(--ink);stroke-width:1}
.command{stroke-width:1.25}
.grid{stroke:var(--rule);stroke-width:1}
.zero{stroke:var(--quiet);stroke-width:1}
.pen.limit{stroke:var(--warn);stroke-width:1.5}
.pen.model{stroke:var(--accent);stroke-width:2}
.pen.rival{stroke:var(--rival);stroke-width:1.75;stroke-dasharray:6 4}
.fill.shade{fill:var(--shade)}
.fill.band{fill:var(--band)}
.fill.rival-band{fill:var(--rival-band)}
.fill.interval{fill:var(--accent)}
.dot{fill:none;stroke-linecap:round}
.dot.recorded{stroke:var(--ink)}
.dot.median{stroke:var(--paper)}
text{font:12px 'Atkinson Hyperlegible',sans-serif;fill:var(--ink)}
text.quiet{fill:var(--quiet)}
text.strong{font-weight:700}
text.limit{fill:var(--warn)}
`;

/** For a figure that stands alone in a file: its own paper, light and dark. */
export const STANDALONE_FIGURE_STYLE = `
svg{color-scheme:light dark;background:var(--paper);${variables(LIGHT)}}
@media (prefers-color-scheme:dark){svg{${variables(DARK)}}}
${FIGURE_STYLE}text{font-family:'Atkinson Hyperlegible',system-ui,sans-serif}
`;

export const STYLE = `
:root{color-scheme:light dark;${variables(LIGHT)}}
@media (prefers-color-scheme:dark){:root{${variables(DARK)}}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--ground);color:var(--ink);font:1.0625rem/1.5 'Atkinson Hyperlegible',sans-serif;font-variant-numeric:tabular-nums}
main{max-width:60rem;margin:2rem auto;padding:3rem 3.5rem 2.5rem;background:var(--paper);border:1px solid var(--rule)}
h1,h2,h3,.finding{font-family:'Source Serif 4',serif;font-weight:600;line-height:1.22;font-variant-numeric:lining-nums tabular-nums}
h1{font-size:2rem;margin:0;text-wrap:balance}
h2{font-size:1.125rem;margin:0;color:var(--quiet)}
h3{font-size:1.0625rem;margin:1.25rem 0 .25rem}
p{margin:.4rem 0 0;max-width:44rem}
.sub{color:var(--quiet)}
.demo{color:var(--warn);font-weight:700}
section,header{padding:1.4rem 0 1.6rem;border-top:1px solid var(--rule)}
header{border-top:0;padding-top:0}
section>div>:first-child,section>div>h3:first-child{margin-top:0}
section.first h2{color:var(--accent)}
.finding{font-size:1.75rem;margin:0;max-width:44rem;text-wrap:pretty}
.finding strong,.finding b{color:var(--accent);font-weight:600}
.plain{font:400 1.25rem/1.4 'Source Serif 4',serif;margin-top:.75rem}
.small{font-size:.9375rem;color:var(--quiet)}
figure{margin:1rem 0 0}
figure>p:first-child{margin-top:0}
figure svg{display:block;width:100%;height:auto}
figcaption{font-size:.9375rem;color:var(--quiet);margin-top:.35rem}
.narrow{display:none}
.key{display:flex;flex-wrap:wrap;gap:.25rem 1.5rem;margin:.5rem 0 0;padding:0;list-style:none;font-size:.9375rem}
.key svg{width:2rem;height:.8rem;display:inline-block;vertical-align:middle;margin-right:.5rem}
table{border-collapse:collapse;width:100%;margin-top:.75rem}
h1,li,p{overflow-wrap:anywhere}
th,td{text-align:left;font-weight:400;padding:.5rem 1rem .5rem 0;vertical-align:top;border-bottom:1px solid var(--rule)}
thead th{font-size:.875rem;color:var(--quiet);padding-top:0}
td.n,th.n{text-align:right;padding-right:0;white-space:nowrap;font-weight:700}
thead th.n{font-weight:400}
.detail{display:block;font-size:.9375rem;color:var(--quiet)}
.bar{width:26%}
td.sure{white-space:nowrap}
.bar span{display:block;height:.7rem;margin-top:.4rem;background:var(--shade)}
.bar i{display:block;height:100%;background:var(--accent);min-width:2px}
tr:not(:first-child) .bar i{background:var(--rival)}
ul{margin:.5rem 0 0;padding-left:1.15rem;max-width:44rem}
li{margin:.3rem 0}
section>div>ul:first-child>li:first-child{margin-top:0}
li::marker{color:var(--quiet)}
dl{display:grid;grid-template-columns:repeat(auto-fill,minmax(13rem,1fr));gap:.9rem 1.5rem;margin:.5rem 0 0}
dt{font-size:.875rem;color:var(--quiet)}
dd{margin:0;overflow-wrap:anywhere}
dl.list{grid-template-columns:minmax(7rem,max-content) 1fr;gap:.2rem 1.25rem;font-size:.875rem}
.caution{border-left:.25rem solid var(--warn);padding-left:1rem;margin-top:.5rem}
.caution p:first-child{margin-top:0}
footer{border-top:1px solid var(--rule);padding-top:1rem;font-size:.875rem;color:var(--quiet)}
${FIGURE_STYLE}@media (min-width:56rem){
section{display:grid;grid-template-columns:8.5rem minmax(0,1fr);column-gap:1.5rem}
}
@media (max-width:44rem){
main{margin:0;border:0;padding:1.5rem 1.125rem}
h1{font-size:1.625rem}.finding{font-size:1.4375rem}.plain{font-size:1.125rem}
h2{margin-bottom:.6rem}
.wide{display:none}.narrow{display:block}
.bar{display:none}td,th{padding-right:.6rem}
dl{grid-template-columns:repeat(auto-fill,minmax(9rem,1fr))}
dl.list{grid-template-columns:1fr}dl.list dd{margin-bottom:.5rem}
}
@media (min-width:44.01rem) and (max-width:55.99rem){h2{margin-bottom:.6rem}}
@media print{
:root{color-scheme:light;${variables({ ...LIGHT, ground: '#fff', paper: '#fff', shade: '#f3f2ec' })}}
@page{size:A4;margin:16mm 15mm 18mm}
body{font-size:10pt;-webkit-print-color-adjust:exact;print-color-adjust:exact}
main{margin:0;padding:0;border:0;max-width:none}
h1{font-size:18pt}.finding{font-size:15pt}.plain{font-size:12pt}
section,header{padding:10pt 0 11pt}
section{display:grid;grid-template-columns:6.5rem minmax(0,1fr);column-gap:1rem}
h2,h3{break-after:avoid}
figure,tr,li,.caution,dl>div{break-inside:avoid}
.wide{display:block}.narrow{display:none}.bar{display:table-cell}
dl.list{grid-template-columns:minmax(7rem,max-content) 1fr}
}
`;
