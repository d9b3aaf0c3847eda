/** Styles of report.html: light and dark by the reader's choice, ink on white when printed. */
export const HTML_STYLE = `
:root{color-scheme:light dark;--paper:#fbfcf8;--ink:#161d1a;--ink2:#434d47;--rule:#7f8a82;--tint:#bfc8be}
@media (prefers-color-scheme:dark){:root{--paper:#141917;--ink:#e9ece3;--ink2:#bac3ba;--rule:#74807a;--tint:#46514b}}
@media print{:root{--paper:#fff;--ink:#161d1a;--ink2:#434d47;--rule:#7f8a82;--tint:#d5dbd3}}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.45 Faustina,Georgia,serif}
main,footer{max-width:760px;margin:0 auto;padding:16px}
h1{font-size:2rem;line-height:1.15;margin:0 0 12px}
h2{font-size:1.2rem;border-top:2px solid var(--ink);padding-top:6px;margin:28px 0 6px;break-after:avoid}
h3{font-size:1.02rem;margin:18px 0 4px;break-after:avoid}
p{margin:0 0 8px}.small,footer,figcaption,caption{font:0.88rem/1.4 "Sofia Sans Semi Condensed","Arial Narrow",Arial,sans-serif;color:var(--ink2)}
.own-words{font-style:italic;white-space:pre-line}
dl{display:grid;grid-template-columns:max-content 1fr;gap:2px 14px;margin:0 0 10px}dt{color:var(--ink2);font-weight:600}dd{margin:0}
ul{margin:0 0 8px;padding-left:20px}
.wide{overflow-x:auto;margin:10px 0 4px}.wide:focus-visible{outline:2px solid #7a5a0a;outline-offset:2px}
table{border-collapse:collapse;width:100%;font:0.92rem/1.35 "Sofia Sans Semi Condensed","Arial Narrow",Arial,sans-serif}
caption{text-align:left;font-weight:600;padding-bottom:4px}code{font:inherit;font-weight:400}
th,td{text-align:left;vertical-align:top;padding:3px 10px 3px 0;border-bottom:1px solid var(--rule);font-weight:400}
thead th{font-weight:600;border-bottom:2px solid var(--ink);vertical-align:bottom}.n{text-align:right;font-variant-numeric:tabular-nums}
thead{display:table-header-group}tr{break-inside:avoid}
figure{margin:10px 0;break-inside:avoid}svg{display:block}svg text{font:12.5px "Sofia Sans Semi Condensed","Arial Narrow",Arial,sans-serif;fill:var(--ink)}
.in{fill:var(--tint)}.over,.full{fill:var(--ink)}.cap{stroke:var(--ink);stroke-width:2;fill:none}.line{stroke:var(--ink);stroke-width:1.4;fill:none}
.hollow{fill:var(--paper);stroke:var(--ink);stroke-width:1.2}.grid{stroke:var(--rule);stroke-width:.5}.dash{stroke:var(--ink);stroke-dasharray:6 3;fill:none}
.dots,.none{stroke:var(--ink);stroke-dasharray:1 3;fill:none}
.caution{border:solid var(--ink);border-width:2px 0;padding:8px 0;margin:20px 0;break-inside:avoid}.caution h2{border:0;padding:0;margin:0 0 4px}
hr.page{border:0;break-after:page;margin:0}
@media print{body{font-size:10pt}main,footer{max-width:none;padding:0}.wide{overflow:visible}}
`.replaceAll('\n', '');
