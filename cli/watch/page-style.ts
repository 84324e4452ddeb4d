/** The look of the live page, over that of the book. */
export const pageStyle = `
.bar{background:var(--leaf);border-bottom:2px solid var(--ink);padding:.5rem 1rem;display:flex;flex-wrap:wrap;gap:.2rem 1rem;align-items:center;position:sticky;top:0;z-index:5}
.bar h1{font-size:1.05rem}
.bar p{margin:0;color:var(--soft)}
.faulty p{color:var(--warn);font-weight:600}
[hidden]{display:none!important}
.acts{display:flex;flex-wrap:wrap;gap:.4rem .6rem;align-items:center;margin:.4rem 0}
.bar .acts{margin:0 0 0 auto}
button:disabled{color:var(--soft);border-style:dashed;cursor:default}
#notice{margin:0;padding:.4rem 1rem;max-width:none;font-weight:600;color:var(--warn)}
#notice:empty{display:none}
#problems{margin:0;padding:.4rem 1rem .4rem 2.2rem;max-height:35vh;overflow:auto;background:var(--leaf);border-bottom:1px solid var(--line);max-width:none}
#problems:empty{display:none}
main,.desk{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem}
main{padding:1rem}
.desk>section,#reading{background:var(--leaf);border:1px solid var(--line);padding:.8rem 1rem;min-width:0}
@media (min-width:62rem){.desk{grid-template-columns:minmax(20rem,26rem) minmax(0,1fr)}#design{max-height:calc(100vh - 5rem);overflow:auto;position:sticky;top:4rem}}
@media (max-width:61.99rem){#outcome{order:-1}}
details{border-top:1px solid var(--line)}
summary{padding:.5rem 0;font-weight:600;cursor:pointer}
fieldset{border:1px solid var(--line);margin:.4rem 0;padding:.3rem .7rem;min-width:0}
legend{font-weight:600;padding:0 .3rem}
.field{display:grid;grid-template-columns:minmax(7rem,2fr) minmax(0,3fr);gap:.1rem .6rem;padding:.25rem 0;align-items:center}
.field>p{grid-column:1/-1;margin:0}
.stated>label{font-weight:600}
.about{font-size:.82rem;color:var(--soft)}
.field:not(.current)>.about{display:none}
.fault{color:var(--warn);font-weight:600}
.fault:empty{display:none}
input[type=text],select{font:inherit;color:var(--ink);background:var(--paper);border:1px solid var(--soft);border-radius:3px;padding:.25rem .4rem;min-width:0;max-width:100%}
.field>input,.field>select{width:100%}
[aria-invalid=true]{border:2px solid var(--warn)}
.slider{display:grid;grid-template-columns:7rem minmax(0,1fr) 7rem;gap:.6rem;align-items:center;min-height:2.2rem}
.slider input{width:100%}
.slider output{font-variant-numeric:tabular-nums}
@media (max-width:30rem){.slider{grid-template-columns:6rem minmax(0,1fr) 5.4rem}}
#picture{width:100%;max-height:22rem;margin:.5rem 0}
#picture .curve{fill:none;stroke:var(--accent);stroke-width:2.5;vector-effect:non-scaling-stroke}
#picture .focus{fill:none;stroke:var(--ink);stroke-width:1.5;vector-effect:non-scaling-stroke}
#picture .plank{fill:none;stroke:var(--cleat);stroke-width:5;vector-effect:non-scaling-stroke}
#picture .pot{fill-opacity:.35}
#picture .ghost *{stroke:var(--soft);stroke-width:1.5;stroke-dasharray:6 5}
.key,#values small{font-size:.82rem;color:var(--soft)}
#values small{display:block;max-width:22rem;white-space:normal}
#values tbody th[scope=rowgroup]{font-weight:600;border-bottom:2px solid var(--ink);padding-top:.8rem}
#values td{padding-left:.7rem}
#values tbody th[scope=row]{min-width:9rem}
#values .changed{font-weight:700;color:var(--lit)}
#values thead button{margin:.2rem .2rem 0 0}
#start{background:var(--leaf);border:1px solid var(--line);margin:1rem 1rem 0;padding:.8rem 1rem}
#start dt{color:var(--soft);font-size:.82rem}
#start dd{margin:0 0 .4rem;font-weight:600}
#start-form{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:.3rem .6rem;max-width:46rem}
#start-form>label,#start-form>p{grid-column:1/-1;margin:0}
.unseen{position:absolute;width:1px;height:1px;margin:-1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
#work-lines{max-height:18rem;overflow:auto;background:var(--paper);padding:.5rem;margin:0}
#work-lines:empty{display:none}
#frames{position:relative;height:92vh;border:1px solid var(--line)}
iframe{position:absolute;inset:0;width:100%;height:100%;border:0}
iframe.coming{visibility:hidden}
#empty{padding:1rem}
`;
