/** The book's look: a drawing board's paper, ink and wood. Light on paper and by day, dark where the reader asks for it. */

const shadeRules = [0, 1, 2, 3, 4, 5, 6]
  .map((shade) => `.s${shade}{--f:color-mix(in oklab,var(--c),#000 ${(6 - shade) * 9}%);fill:var(--f)}`)
  .join('\n');

export const bookStyle = `
:root{color-scheme:light;
--paper:#eeeae0;--leaf:#fffdf8;--ink:#1f2d36;--soft:#51606a;--line:#cbc3b2;--accent:#0d5a64;--lit:#b23c0a;--litfill:#f2a57f;--warn:#8f2208;
--board:#e6d6b2;--hub:#c99f62;--cleat:#ab7a3f;--rib:#d8b67e;--panel:#a88a6b;--mirror:#bdd6e0;--vessel:#5b6166;--stand:#d9c08f;--stuff:#ecdcb8;--stock:#f8f3e6;--skin:#cdbba6;--block:#d2b592;--disc:#dcc196;--glass:#bdd6e0;--metal:#9aa3a8;--aid:#e9d36a;--cover:#8f9b8c}
@media screen and (prefers-color-scheme:dark){:root{color-scheme:dark;
--paper:#12181b;--leaf:#1a2226;--ink:#ebe6da;--soft:#aab5ba;--line:#3c484f;--accent:#8accd3;--lit:#ffa873;--litfill:#8f4416;--warn:#ffb59a;
--board:#a5946c;--hub:#a27f4a;--cleat:#8a6432;--rib:#b5935c;--panel:#84694c;--mirror:#8fb0bd;--vessel:#6d757b;--stand:#9c8250;--stuff:#5b4f36;--stock:#232d32;--skin:#54483a;--block:#5d4b33;--disc:#625136;--glass:#35505c;--metal:#8b959b;--aid:#a8922f;--cover:#5f6b5d}}
@media screen and (prefers-color-scheme:dark){.simulated svg{filter:brightness(.68)}}
*{box-sizing:border-box}
html{background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans",sans-serif;scroll-behavior:smooth}
@media (prefers-reduced-motion:reduce){html{scroll-behavior:auto}}
body{margin:0;overflow-wrap:anywhere}
a{color:var(--accent)}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
.skip{position:absolute;left:-99em}.skip:focus{left:.5rem;top:.5rem;background:var(--leaf);padding:.5rem;z-index:9}
.wrap{max-width:78rem;margin:0 auto;padding:1rem;display:grid;gap:1rem}
h1{font-size:1.6rem;line-height:1.2;margin:0}
h2{font-size:1.25rem;line-height:1.25;margin:0 0 .75rem;padding-bottom:.4rem;border-bottom:2px solid var(--ink)}
h3{font-size:1.02rem;margin:1.25rem 0 .4rem}
p,ul,ol{margin:.5rem 0;max-width:44rem}
li{margin:.2rem 0}
.leaf{background:var(--leaf);border:1px solid var(--line);padding:1rem 1.15rem;min-width:0}
header .block{display:grid;grid-template-columns:repeat(auto-fit,minmax(8.5rem,1fr));margin:1rem 0 0;border:2px solid var(--ink)}
.block.decides{margin-top:.4rem;border-color:var(--accent)}.block div{border:1px solid var(--line);padding:.35rem .6rem;margin:0 -1px -1px 0}
.block dt{font-size:.8rem;color:var(--soft)}
.block dd{margin:0;font-weight:600;font-variant-numeric:tabular-nums}
.beware{border-left:6px solid var(--warn);padding-left:.8rem;margin-top:1rem}
.at{display:none}
.facts div{display:flex;gap:.6rem;border-bottom:1px solid var(--line)}.facts dt{color:var(--soft);min-width:4.5rem}.facts dd{margin:0}
nav ol{list-style:none;padding:0;margin:0;display:flex;flex-wrap:wrap;gap:.2rem 1.1rem;max-width:none}
nav a{display:inline-block;padding:.25rem 0}
figure{margin:.75rem 0}
figcaption{color:var(--soft);font-size:.9rem;margin-top:.35rem;max-width:44rem}
svg{display:block;max-width:100%;height:auto}
:is(figure,.pane)>svg:not(.forecast-plot,.shop) text{font-family:inherit;fill:var(--ink);text-anchor:middle}
.dish path{stroke-linejoin:round;stroke-linecap:round}.dish [class^=s]{stroke:var(--f);stroke-width:1.2}.dish .e{fill:none;stroke:var(--ink);stroke-width:1.6}.new .e{stroke-width:2.6}
.k-board{--c:var(--board)}.k-hub{--c:var(--hub)}.k-cleat{--c:var(--cleat)}.k-rib{--c:var(--rib)}.k-panel{--c:var(--panel)}.k-mirror{--c:var(--mirror)}.k-vessel{--c:var(--vessel)}.k-stand{--c:var(--stand)}.k-splice{--c:var(--hub)}.k-metal{--c:var(--metal)}.k-aid{--c:var(--aid)}.k-batten{--c:var(--cleat)}.k-cover{--c:var(--cover)}
${shadeRules}
.sun{fill:var(--hub);stroke:none}.ray{fill:none;stroke:var(--lit);stroke-width:1;vector-effect:non-scaling-stroke}.mirror-line{fill:none;stroke:var(--accent);stroke-width:3;vector-effect:non-scaling-stroke}.pot{fill:var(--vessel);stroke:var(--ink);vector-effect:non-scaling-stroke}
.stepped g:not(.new)>[class^=s]{--g:color-mix(in oklab,var(--f),var(--leaf) 62%);fill:var(--g);stroke:var(--g)}
.stepped g:not(.new)>.e{stroke:color-mix(in oklab,var(--ink),var(--leaf) 45%)}
.dish :is(.on-scribe,.on-drill){fill:none;stroke:var(--ink);stroke-width:1.3}.dish .on-glue{fill:none;stroke:var(--lit);stroke-width:7;stroke-dasharray:1 9}.dish .on-tape{fill:none;stroke:var(--accent);stroke-width:7}
.dish :is(.leader,.along){fill:none;stroke:var(--ink);stroke-width:2}.dish .along{stroke-width:1.6;stroke-dasharray:24 6 4 6}.dot{fill:var(--ink)}.balloon{fill:var(--leaf);stroke:var(--ink);stroke-width:2.5}
.dish .way{fill:var(--lit);stroke:var(--lit);stroke-width:6}
.dish text{font-family:Helvetica,Arial,'Liberation Sans',sans-serif;}.aid{fill:var(--aid);stroke:var(--ink);stroke-width:1;vector-effect:non-scaling-stroke}.plan text.on{paint-order:stroke;stroke:var(--leaf);stroke-width:.25em}.dish text.on{paint-order:stroke;stroke:var(--leaf);stroke-width:7;stroke-linejoin:round}
.stuff{fill:var(--stuff);stroke:var(--ink);stroke-width:1;vector-effect:non-scaling-stroke}
.of-reflector{--stuff:var(--glass)}.of-panel{--stuff:var(--skin)}.of-cleat{--stuff:var(--block)}.of-hub{--stuff:var(--disc)}
.stock{fill:var(--stock);stroke:var(--ink);stroke-width:1.5;vector-effect:non-scaling-stroke}
.margin{fill:none;stroke:var(--line);stroke-width:1;stroke-dasharray:4 4;vector-effect:non-scaling-stroke}
.offcut{fill:none;stroke:var(--accent);stroke-width:1;stroke-dasharray:8 5;vector-effect:non-scaling-stroke}
.piece .stuff{stroke:none}.line{fill:none;stroke-width:1.2;vector-effect:non-scaling-stroke}.sheet .leader{fill:none;stroke:var(--ink);stroke-width:1;vector-effect:non-scaling-stroke}.zero{fill:none;stroke:var(--ink);stroke-width:2;vector-effect:non-scaling-stroke}.swatch{display:inline-block;width:2.2em;height:.7em;margin-right:.4em}.swatch path{stroke-width:3}
.gap{fill:var(--leaf);stroke:var(--ink);stroke-width:1;vector-effect:non-scaling-stroke}
.piece circle,.hole{fill:var(--leaf);stroke-width:1;vector-effect:non-scaling-stroke}.hole{stroke:var(--ink);stroke-width:.7}
.axis{fill:none;stroke:var(--accent);stroke-width:1;stroke-dasharray:14 4 3 4;vector-effect:non-scaling-stroke}
.thin,path.dim{fill:none;stroke:var(--soft);stroke-width:.8;vector-effect:non-scaling-stroke}
:is(figure,.pane)>svg text.no{dominant-baseline:central}
:is(figure,.pane)>svg text.name{dominant-baseline:central}
:is(figure,.pane)>svg text.row{text-anchor:start}:is(figure,.pane)>svg text.before{text-anchor:end}:is(figure,.pane)>svg text.after{text-anchor:start}
.lit .stuff,.stuff.lit,.lit path[class^=s]{--f:var(--litfill);fill:var(--litfill);stroke:var(--lit);stroke-width:2}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:.93rem;margin:.75rem 0}
caption{text-align:left;color:var(--soft);padding-bottom:.3rem;font-size:.9rem}
th,td{border-bottom:1px solid var(--line);padding:.28rem .7rem .28rem 0;text-align:right;vertical-align:top;overflow-wrap:normal}
th[scope=row],th:first-child,.words{text-align:left;font-weight:inherit}
thead th{font-weight:600}
tfoot th,tfoot td{border-top:2px solid var(--ink);font-weight:600}
td:not(.words){white-space:nowrap}
.scroll{overflow-x:auto}
button{font:inherit;color:var(--ink);background:var(--leaf);border:1px solid var(--soft);border-radius:3px;padding:.3rem .7rem;min-height:2.2rem;cursor:pointer}
button[aria-pressed=true]{background:var(--litfill);border-color:var(--lit)}
input[type=range]{accent-color:var(--accent);width:min(16rem,60vw)}
.controls,.live .plain-only,.tools{display:none}
.live .controls,.live .tools{display:flex;flex-wrap:wrap;gap:.5rem;align-items:center;margin:.5rem 0}
.controls label{display:flex;gap:.6rem;align-items:center}
@media screen and (min-width:68rem){.beside{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 2rem;align-items:start}.beside figure{position:sticky;top:.5rem}.beside svg{max-height:80vh}}
#stage{display:none;position:relative;height:min(34rem,78vw);border:1px solid var(--line);background:var(--leaf)}
.spatial #stage{display:block}.spatial #drawn{display:none}
@media screen{#drawn{margin:0}.live #drawn svg{height:min(34rem,78vw);margin:0 auto}}
#stage canvas{display:block;width:100%;height:100%;touch-action:pan-y;cursor:grab}
.pane{overflow:hidden;border:1px solid var(--line);background:var(--leaf)}
.live .pane{cursor:grab}
.pane>svg{width:100%}
@media screen{.facts{max-width:44rem}}
@media screen and (min-width:46.01rem){.live .tools.narrow{display:none}}
.large{border:0;padding:0;width:100vw;height:100dvh;max-width:none;max-height:none;background:var(--leaf);color:var(--ink)}
.large[open]{display:grid;grid-template-rows:auto minmax(0,1fr)}
.large .tools{margin:0;padding:.4rem}.large .tools button{min-width:2.6rem;min-height:2.6rem}
.large .pane{overflow:auto;border-width:1px 0 0}.large .pane>svg{max-width:none;max-height:none;height:auto;margin:0 auto}
.shop{color:var(--ink);width:100%}
.steps{list-style:none;padding:0;max-width:none;counter-reset:step}
.step{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1.15fr);gap:.3rem 1.5rem;border-top:1px solid var(--line);padding:.9rem 0;margin:0;break-inside:avoid}
.step>:is(h3,.needs){grid-column:1/-1}
.step h3{margin:0}
.step figure{margin:0}
.details{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(14rem,100%),1fr));gap:.5rem 1.2rem;max-width:44rem;margin-top:.5rem}.detail:only-child{max-width:21rem}
.step svg{width:100%}
.needs{list-style:none;padding:.3rem .6rem;margin:.2rem 0;border:1px solid var(--line);display:flex;flex-wrap:wrap;gap:.2rem 1.1rem;max-width:none;align-items:center;font-size:.93rem}
.needs li{display:flex;flex-wrap:wrap;gap:.2rem .5rem;align-items:center;margin:0}.ball{display:inline-grid;place-items:center;min-width:1.6em;height:1.6em;border:1.5px solid;border-radius:1em;padding:0 .25em;font-weight:600}
.step .true{width:auto;height:auto;max-width:100%}.true path{fill:var(--metal);stroke:var(--ink);stroke-width:.25}
.mat{fill:var(--leaf)}.dish .mat{stroke:none}.lens{fill:none;stroke:var(--ink);stroke-width:3}.bore{fill:var(--leaf);stroke:var(--ink);stroke-width:1.5}.gluing{fill:var(--lit)}.hatching{fill:none;stroke:var(--ink);stroke-width:1;opacity:.55}
.scribed{fill:none;stroke:var(--lit);stroke-width:9}.good,.bad{fill:none;stroke:var(--accent);stroke-width:10}.bad{stroke:var(--warn)}
.checks{list-style:none;padding:0}
.checks li::before{content:"☐ ";font-size:1.1em}
.cautions h3{color:var(--warn);font-size:1.15rem}
.cautions p{font-size:1.08rem}
.plots{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(22rem,100%),1fr));gap:1rem}
.plots figure{margin:0}
.problems li{margin:.4rem 0}
pre{white-space:pre-wrap;font-size:.8rem;color:var(--soft);overflow-wrap:anywhere}
@media (max-width:46rem){.wrap{padding:.5rem}.leaf{padding:.8rem .7rem}.step{grid-template-columns:minmax(0,1fr)}}
@media screen and (max-width:46rem){table{font-size:.8rem}th,td{padding:.25rem .3rem .25rem 0}td:not(.words){white-space:normal}td.words,.parts td:last-child{overflow-wrap:anywhere}:is(th,td) button{padding:.2rem .3rem}.parts thead th{font-size:.72rem}}
`;
