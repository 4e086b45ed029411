/** Light and dark, for any width of screen. */
export const DOCS_STYLE = `
:root{color-scheme:light dark;--ink:light-dark(#1d1a16,#ece6da);--paper:light-dark(#fbf9f5,#1a1815);
--rule:light-dark(#b9ad9a,#6b6355);--soft:light-dark(#f0e9dc,#26231e);--link:light-dark(#7a3300,#ffb27a)}
body{margin:0 auto;padding:1rem;max-width:60rem;background:var(--paper);color:var(--ink);font:1rem/1.5 'DejaVu Sans',Verdana,sans-serif}
a{color:var(--link)}
h1{font-size:1.5rem;margin:.5rem 0}h2{font-size:1.3rem;margin:2rem 0 .5rem}h3{font-size:1.1rem;margin:0}h4{font-size:1rem;margin:.75rem 0 .25rem}
section{border-top:2px solid var(--rule);padding:1rem 0;scroll-margin-top:1rem}
code,pre,textarea{font:.9rem/1.45 'DejaVu Sans Mono',monospace}
code{background:var(--soft);padding:.05rem .25rem;overflow-wrap:anywhere}
pre{background:var(--soft);padding:.75rem;overflow:auto;max-height:24rem;margin:.5rem 0;white-space:pre-wrap;overflow-wrap:anywhere}
textarea{width:100%;box-sizing:border-box;min-height:9rem;background:var(--soft);color:var(--ink);border:1px solid var(--rule)}
select,button{font:inherit;min-height:2.75rem;padding:0 1rem;max-width:100%}
button{background:var(--link);color:var(--paper);border:1px solid var(--link);border-radius:.4rem;cursor:pointer}
table{border-collapse:collapse;width:100%;margin:.5rem 0}
th,td{text-align:left;vertical-align:top;padding:.25rem .5rem .25rem 0;border-bottom:1px solid var(--rule);font-weight:400}
thead th{font-size:.85rem;font-weight:700}
details{margin:.5rem 0}summary{cursor:pointer;min-height:2.75rem;line-height:2.75rem}
@media(max-width:40rem){table,tbody,tr,th,td{display:block}thead{display:none}tr{border-bottom:1px solid var(--rule);padding:.25rem 0}th,td{border:0;padding:0}}
nav h2{font-size:1.1rem;margin:0}nav ul{columns:18rem;padding-left:1.2rem}
`.replaceAll('\n', '')
