/**
 * How a page looks, on a screen by day and by night, and on paper. Two columns: on the wide side what was found, on the
 * narrow side what to do and what can hurt. No colour carries a meaning. Logical directions, so that it turns with the language.
 */
export const htmlStyle = `
:root{color-scheme:light dark;--ink:#1b1b1b;--soft:#4f4f4f;--rule:#c4c4c4;--paper:#fff;--link:#0b4f8a;
--serif:Charter,"Bitstream Charter","Sitka Text",Cambria,"Noto Serif",Georgia,serif;
--sans:system-ui,"Helvetica Neue","Noto Sans",Arial,sans-serif}
@media screen and (prefers-color-scheme:dark){:root{--ink:#ececec;--soft:#b9b9b9;--rule:#4d4d4d;--paper:#17191b;--link:#86c5f7}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:62rem;padding:2rem 1.25rem 3rem;background:var(--paper);color:var(--ink);
font:1rem/1.45 var(--serif);overflow-wrap:anywhere}
h1,h2,h3,p,ul,ol,figure{margin:0;padding:0}
h1,h2,h3{font-family:var(--sans);line-height:1.25}
h1{font-size:1rem;font-weight:600}
h2{font-size:.8rem;font-weight:600;color:var(--soft);margin-block-end:.3rem}
h3{font-size:.8rem;font-weight:700;margin-block:.35rem .1rem}
ul,ol{list-style-position:outside;padding-inline-start:1.2em}
li{margin-block:.15rem}
a{color:var(--link)}
header{display:flex;flex-wrap:wrap;align-items:baseline;gap:.1rem 1.5rem;border-block-end:2px solid var(--ink);padding-block-end:.4rem}
header h1{flex:1}
header p{font:.9rem/1.3 var(--sans)}
.verdict{display:grid;grid-template-columns:1fr 1fr;gap:.3rem 2rem;padding-block:1rem .9rem;border-block-end:1px solid var(--rule)}
.verdict h2,.verdict .reason{grid-column:1/-1;margin:0}
.verdict .axis{border-inline-start:3px solid var(--ink);padding-inline-start:.7rem}
.verdict .name{font:.75rem/1.3 var(--sans);color:var(--soft)}
.verdict .answer{font-size:1.7rem;line-height:1.15}
.verdict .reason{color:var(--soft)}
.columns{display:grid;grid-template-columns:minmax(0,1.75fr) minmax(0,1fr);gap:0 2rem}
.columns section{padding-block:.75rem}
.columns li,.columns p{break-inside:avoid}
.columns h2,.columns h3{break-after:avoid}
.columns section+section{border-block-start:1px solid var(--rule)}
.aside{font-size:.92rem;border-inline-start:1px solid var(--rule);padding-inline-start:1.4rem}
.hazard{border:2px solid var(--ink);padding:.5rem .7rem;margin-block:.2rem}
.hazard h3{margin-block-start:0}
.steps{font:.72em/1 var(--sans);white-space:nowrap;color:var(--soft)}
.steps a,.inputs a{text-decoration:none}
.note{font:.8rem/1.35 var(--sans);color:var(--soft);padding-block-start:.4rem}
.pictures{border-block-start:1px solid var(--rule);padding-block-start:.75rem}
.pictures div{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,24rem),1fr));gap:1rem}
figure{break-inside:avoid}
figure svg{display:block;width:100%;height:auto}
.derivation{border-block-start:2px solid var(--ink);margin-block-start:1.5rem;padding-block-start:.75rem;font-size:.9rem}
.derivation ol{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,25rem),1fr));gap:.9rem 2rem;list-style:none;padding:0}
.derivation li{display:grid;align-content:start;grid-template-columns:2.2em minmax(0,1fr);margin:0;break-inside:avoid;scroll-margin:1rem}
.derivation li:target{outline:2px solid var(--link);outline-offset:.3rem}
.derivation .number{grid-row:1/span 5;font:600 .8rem/1.6 var(--sans);color:var(--soft);font-variant-numeric:tabular-nums}
.derivation .quantity{font-weight:700}
.derivation .formula{line-height:1.7;overflow-x:auto;overflow-y:hidden}
.derivation .inputs,.derivation .source{font-size:.85em;color:var(--soft)}
.derivation .result{font-weight:600;font-variant-numeric:tabular-nums}
math{font-family:"Latin Modern Math","STIX Two Math","Cambria Math","Noto Sans Math",math;font-size:1.05em;math-style:normal}
@media (max-width:44rem){.columns,.verdict{grid-template-columns:minmax(0,1fr)}
.aside{border:0;padding:0;grid-row:1;border-block-end:1px solid var(--rule)}}
@page{margin:11mm 13mm}
@media print{:root{color-scheme:light;--ink:#000;--soft:#333;--rule:#999;--paper:#fff;--link:#000}
body{max-width:none;padding:0;font-size:8.6pt;line-height:1.3}
.columns{grid-template-columns:minmax(0,1.7fr) minmax(0,1fr);gap:0 5mm}
.verdict{grid-template-columns:1fr 1fr;padding-block:2mm 1.8mm}
.verdict .answer{font-size:14pt}
h1{font-size:10pt}h2,h3{font-size:7.6pt}h2{margin-block-end:.5mm}
.columns section{padding-block:1.5mm}
.aside{padding-inline-start:3.5mm;font-size:8pt;grid-row:auto}
li{margin-block:.2mm}
header p,.note{font-size:7.6pt}
a{text-decoration:none}
.pictures div{grid-template-columns:1fr 1fr;gap:3mm}
.derivation,.appendix{break-before:page}
.appendix .derivation{break-before:auto}
.derivation{border:0;margin:0;font-size:7.8pt}
.appendix .pictures{border:0;padding-block-end:3mm}
.derivation ol{grid-template-columns:1fr 1fr;gap:2.2mm 6mm}}
`;
