/** How the book looks on paper: a box of one page for each leaf, in which what grows takes the room that is left. */
import { margins, type Paper } from './paper.js';
import { PRINTED_TEXT } from './printed-height.js';

/** A page's box ends this far above the end of the page, mm, so that rounding never makes a page more. */
const CLEAR = 0.5;

/** Text for a CSS string. */
const quoted = (text: string): string => `"${text.replace(/["\\\n<]/g, ' ')}"`;

export function printStyle({ name, height }: Paper, job: string): string {
  return `
@media print{
@page{size:${name};margin:${margins.top}mm ${margins.side}mm ${margins.bottom}mm;@bottom-left{content:${quoted(job)};font:8pt sans-serif}@bottom-right{content:counter(page) " of " counter(pages);font:8pt sans-serif}}
html{font-size:${((PRINTED_TEXT / 25.4) * 72).toFixed(2)}pt;line-height:1.34;background:#fff}
.screen.screen,.skip,.live .controls,.live .tools,.spatial #stage{display:none}
.spatial #drawn{display:flex}
.wrap{display:block;padding:0;max-width:none}
.leaf{border:0;padding:0;background:none;height:${(height - CLEAR).toFixed(2)}mm;break-after:page;display:flex;flex-direction:column;gap:2mm}
.leaf:last-child{break-after:auto}
.chapter{display:flex;flex-direction:column;flex:0 0 auto}
.filled{flex:1 1 auto;min-height:0}
.chapter>*{flex:0 0 auto}
.chapter>.grow,.grow>.steps{flex:1 1 auto;min-height:0;display:flex;flex-direction:column}
.grow>:not(figure,.steps,.plots){flex:0 0 auto}
.grow>figure{flex:1 1 0;min-height:0;display:flex;flex-direction:column;margin:1mm 0}
.grow>figure>:is(svg,.pane,.scroll){flex:1 1 0;min-height:0;max-height:none;width:100%}
.grow .pane{display:flex}.grow :is(.pane,.scroll)>svg{width:100%;height:100%;max-height:none}
p,ul,ol{margin:.22rem 0;max-width:none}
h1{font-size:1.7rem}
h2{font-size:1.35rem;margin:0 0 .4rem;padding-bottom:.2rem}
h3{margin:.5rem 0 .15rem}
figure,table{margin:.3rem 0}
figcaption{margin-top:.1rem;max-width:none}
header .block{margin-top:1.5mm}.beware{margin:1.5mm 0 0}
nav ol{display:block;columns:2;column-gap:10mm}nav li{display:flex;justify-content:space-between;border-bottom:1px dotted var(--line);margin:0}nav a{padding:0}.at{display:inline}
tr,h2,h3{break-inside:avoid}
th,td{padding:.05rem .5rem .05rem 0;line-height:1.34}
table{font-size:.9rem}
caption{font-size:.9rem;padding-bottom:.1rem}
.forecast{font-size:.85rem}
.parts th,.forecast th{white-space:nowrap}
.scroll{overflow:visible}
.cautions h3{display:inline;font-size:1.02rem}.cautions h3::after{content:". "}.cautions h3+p{display:inline;font-size:1rem}.cautions h3+p::after{content:"";display:block;margin-bottom:.25rem}
.cautions{display:block}.cautions.filled{display:flex}
.reaches .two{padding:0}.reaches p{margin:0 0 .2rem;font-size:.9rem}.cautions .grow>figure+figure{flex-grow:1.4}
.plots{grid-template-columns:1fr 1fr 1fr;gap:2mm 4mm}
.plots figure{display:flex;flex-direction:column;min-height:0}.plots svg{flex:1 1 0;min-height:0;max-height:none;width:100%}.grow>.plots{flex:1 1 auto;min-height:0;grid-auto-rows:minmax(0,1fr);max-height:190mm}
.two{columns:2;column-gap:6mm;font-size:.9rem;line-height:1.26;padding-left:1.2rem}.two li{break-inside:avoid}
.before{columns:2;column-gap:6mm;font-size:.92rem;line-height:1.26}.before li{break-inside:avoid}.before h3:first-child{margin-top:0}.before ul{padding-left:1.2rem}
.facts{margin:1mm 0;columns:2;column-gap:5mm}.facts div{gap:2mm;break-inside:avoid}
.facts{margin:1mm 0;display:grid;grid-template-columns:1fr 1fr;gap:0 5mm}.facts .wide{grid-column:1/-1}.left:has(figure) .facts{grid-template-columns:1fr;align-content:start}.facts div{gap:2mm}
.setting{columns:2;column-gap:8mm}.setting table{width:100%;margin:0}.setting.few{columns:1}.setting.few table{width:calc(50% - 4mm)}
.pair{display:grid;grid-template-columns:1fr 1fr;gap:0 8mm;align-items:start}
.problems li{margin:.1rem 0}
.pane{border:0;background:none}
.step{flex:1 1 auto;grid-template-columns:minmax(0,1fr) 40%;grid-template-rows:auto auto minmax(0,1fr);gap:.2rem 5mm;padding:.3rem 0}.steps{margin:0}.step p,.step ul{margin:.12rem 0}.details{grid-template-columns:repeat(2,minmax(0,1fr));gap:2mm 4mm;margin-top:1mm}.detail:only-child{width:50mm}.details svg{max-height:30mm}.step figcaption{font-size:.9rem;margin-top:.1rem}.step>figure{position:relative;min-height:38mm}.step>figure>svg{position:absolute;inset:0;width:100%;height:100%;max-height:none}.step div{font-size:.97rem;line-height:1.3}.step .needs{padding:.1rem .4rem;margin:0}
#drawn svg{margin:0 auto}
button{border:0;padding:0;min-height:0;background:none}
a{color:inherit;text-decoration:none}
details{display:block;font-size:.8rem}pre{font-size:.8rem;margin:.2rem 0}
}
`;
}
