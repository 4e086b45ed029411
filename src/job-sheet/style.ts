/** Light and dark by the reader's own wish; on paper black on white, no operation torn in two. */
export const STYLE = `
:root{color-scheme:light dark;--ink:light-dark(#1d1a16,#ece6da);--paper:light-dark(#fbf9f5,#1a1815);
--rule:light-dark(#b9ad9a,#6b6355);--warn:light-dark(#8a3b00,#ffb27a);--soft:light-dark(#f0e9dc,#26231e)}
body{margin:0 auto;padding:1rem;max-width:52rem;background:var(--paper);color:var(--ink);font:1rem/1.5 'DejaVu Sans',Verdana,sans-serif}
h1{font-size:1.4rem;line-height:1.25}h2{font-size:1.1rem;margin:0}
ol{clear:both;list-style:none;margin:0;padding:0}
h3{font-size:1rem;margin:.5rem 0 .15rem}
.need{border-top:2px solid var(--rule);margin-top:1rem;padding:1rem 0}
.need ul{list-style:none;margin:0;padding:0;columns:14rem}
.need li{display:flex;gap:.6rem;break-inside:avoid;padding:.1rem 0}
li.step{border-top:2px solid var(--rule);padding:1rem 0;break-inside:avoid}
.head{display:flex;gap:.75rem;align-items:baseline}
.box{flex:none;width:1.1em;height:1.1em;border:2px solid currentColor;border-radius:2px;transform:translateY(.15em)}
p{margin:.35rem 0}
table{border-collapse:collapse;width:100%;margin:.5rem 0}
th,td{text-align:left;padding:.25rem .5rem;border-bottom:1px solid var(--rule);font-weight:400}
td.n,th.n{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}
thead th{font-size:.85rem;font-weight:700}
.caution{display:flow-root;border-left:.35rem solid var(--warn);padding:.25rem .75rem;background:var(--soft)}
.caution b{color:var(--warn)}
.blank{display:inline-block;min-width:7rem;border-bottom:1.5px solid currentColor;height:1.4em;vertical-align:bottom}
dd{white-space:pre-line}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.15rem .75rem;margin:.35rem 0}dt{font-weight:700}dd{margin:0}
.code{float:right;width:8rem;margin:0 0 .5rem 1rem;background:#fff;fill:#000}
td:not(.n):last-child{overflow-wrap:anywhere}
@media (max-width:34rem){body{padding:.6rem}dl{grid-template-columns:1fr}th,td{padding:.25rem .1rem;font-size:.8rem}thead th{font-size:.75rem}td.n,th.n{white-space:normal}.blank{min-width:4rem}}
@page{margin:10mm}
@media print{:root{--ink:#000;--paper:#fff;--rule:#777;--warn:#000;--soft:#fff}body{max-width:none;padding:0;font-size:10pt}}
`.replaceAll('\n', '')
