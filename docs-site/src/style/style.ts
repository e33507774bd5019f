/** Okabe–Ito colours, always beside a word and with a mark of their own shape and hatch: colour alone carries nothing. */
export const style = `:root { color-scheme: light dark; --ink: #1b242c; --soft: #4f5b65; --paper: #fff; --wash: #f3f5f6; --line: #7d8891; --link: #0072B2;
  --fails: #D55E00; --should: #E69F00; --note: #0072B2; --holds: #009E73; --waived: #CC79A7; --open: #6b7680; --mono: ui-monospace, "Cascadia Mono", Menlo, "DejaVu Sans Mono", monospace; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6ebee; --soft: #aab5bd; --paper: #12181d; --wash: #1b232a; --line: #71808c; --link: #56B4E9; --open: #9aa5ae; } }
* { box-sizing: border-box; }
body { font: 1rem/1.5 system-ui, sans-serif; font-variant-numeric: tabular-nums; color: var(--ink); background: var(--paper); max-width: 82rem; margin: 0 auto; padding: .5rem clamp(.75rem, 3vw, 2rem); overflow-wrap: break-word; }
a { color: var(--link); text-underline-offset: .15em; }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.skip { position: absolute; left: -99rem; } .skip:focus { position: static; }
h1, h2, h3, h4, h5, h6, caption { line-height: 1.25; break-after: avoid; text-wrap: balance; }
h1 { font-size: clamp(1.4rem, 4vw, 2rem); font-weight: 600; margin: 0; padding: .75rem 1rem; }
h2 { font-size: 1.2rem; margin: 2.25rem 0 .75rem; padding-bottom: .2rem; border-bottom: 2px solid var(--ink); }
h3 { font-size: 1.05rem; margin: 1.5rem 0 .5rem; } h4, h5, h6 { font-size: 1rem; margin: 1rem 0 .5rem; }
p, ul, ol, dl, pre { margin: .5rem 0; } .prose > p, .prose > ul, .prose > ol, main > .body > p { max-width: 72ch; }
code, pre, .block dt, .formula { font-family: var(--mono); font-size: .875em; }
pre { background: var(--wash); padding: .75rem; border: 1px solid var(--line); white-space: pre-wrap; overflow-wrap: anywhere; }
.top { display: flex; flex-wrap: wrap; gap: .25rem 2rem; justify-content: space-between; align-items: baseline; padding: .25rem 0 .75rem; }
.top p { margin: 0; font-weight: 600; }
.menu ul, .contents ul { list-style: none; display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; margin: 0; padding: 0; }
.menu a, .contents a { display: inline-block; padding: .2rem 0; } .menu [aria-current] { color: inherit; font-weight: 600; }
.contents { border-block: 1px solid var(--line); padding: .35rem 0; margin: 1rem 0; }
main { border: 2px solid var(--ink); outline: 1px solid var(--line); outline-offset: 4px; }
.body { padding: .5rem clamp(.75rem, 2.5vw, 2rem) 2rem; }
.title { border-bottom: 2px solid var(--ink); }
.block { display: flex; flex-wrap: wrap; margin: 0; overflow: hidden; border-top: 1px solid var(--line); }
.block div { flex: 1 1 auto; min-width: 7rem; max-width: 100%; padding: .3rem 1rem .4rem; margin: 0 -1px -1px 0; border: solid var(--line); border-width: 0 1px 1px 0; }
.block dt { color: var(--soft); font-size: .75rem; letter-spacing: .03em; } .block dd { margin: 0; font-weight: 600; }
table { border-collapse: collapse; font-size: .9375rem; } caption { text-align: left; font-weight: 600; padding: .25rem 0; }
th, td { border: 1px solid var(--line); padding: .3rem .6rem; text-align: left; vertical-align: top; overflow-wrap: break-word; }
thead th { background: var(--wash); white-space: nowrap; } tbody th { font-weight: 600; }
.wide { overflow-x: auto; max-width: 100%; } .whole, .at-right { white-space: nowrap; } .at-right { text-align: right; } .at-center { text-align: center; }
@media screen { .wide th[scope="row"] { position: sticky; left: 0; background: var(--paper); z-index: 1; } }
.schedule thead th { white-space: normal; vertical-align: bottom; }
.wide + .wide { margin-top: 1rem; } .months { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr)); gap: 1rem 2rem; } .month td { height: 3.2rem; width: 14.3%; vertical-align: top; border: 1px solid var(--line); overflow-wrap: anywhere; font-size: .75rem; } .month td.one { background: color-mix(in srgb, currentColor 8%, transparent); } .month td.several { outline: 2px solid currentColor; outline-offset: -2px; } .month { min-width: 32rem; } .month a { display: block; } .month time { color: var(--soft); }
@media screen and (max-width: 42rem) { .rows :is(table, caption, tbody, tr, th, td) { display: block; border: 0; padding: 0; text-align: left; white-space: normal; } .rows thead { position: absolute; overflow: hidden; clip-path: inset(50%); height: 1px; white-space: nowrap; }
  .rows tr { display: flex; flex-wrap: wrap; gap: .1rem 1.25rem; padding: .5rem 0; border-top: 1px solid var(--line); } .rows :is(th, td) { min-width: 0; } .rows td:empty { display: none; } .facts div { flex-wrap: wrap; } .rows td::before { color: var(--soft); } .rows:is(.panels, .hangs) td:first-of-type { font-weight: 600; } }
.keys table { width: 100%; table-layout: fixed; } .keys thead th { width: 26%; white-space: normal; } .keys thead th:first-child { width: 15%; } .keys thead th:nth-child(2) { width: 34%; }
td > ul { padding-left: 1.1rem; margin: 0; }
.sign td { min-width: 9rem; height: 3rem; }
.state { white-space: nowrap; } .counts { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; } .verdict { font-weight: 700; }
.state::before { content: ""; display: inline-block; width: .8em; height: .8em; margin-right: .4em; vertical-align: -.05em; border: 2px solid var(--hue); print-color-adjust: exact; }
.holds { --hue: var(--holds); } .open { --hue: var(--open); } .waived { --hue: var(--waived); } .fails { --hue: var(--fails); } .fails.should { --hue: var(--should); } .fails.note { --hue: var(--note); }
.state.holds::before { border-radius: 50%; background: var(--hue); }
.state.fails::before { background: repeating-linear-gradient(45deg, var(--hue) 0 2px, transparent 2px 4px); }
.state.fails.should::before { background: repeating-linear-gradient(0deg, var(--hue) 0 2px, transparent 2px 4px); }
.state.fails.note::before { background: linear-gradient(90deg, var(--hue) 50%, transparent 50%); }
.state.open::before { border-style: dashed; } .state.waived::before { border-radius: 50%; background: radial-gradient(var(--hue) 30%, transparent 35%); }
.checks { list-style: none; padding: 0; } .check { border-left: .4rem solid var(--hue); padding: .15rem 0 .15rem .9rem; margin: 0 0 1rem; break-inside: avoid; }
.check.holds { border-left-width: .2rem; } .check.fails { border-left-style: double; } .check.open { border-left-style: dashed; } .check.waived { border-left-style: dotted; }
.check p, .check dl, .check ol { margin: .15rem 0; } .what, .rests, small, .working { color: var(--soft); font-size: .875rem; } .what .state { color: var(--ink); font-weight: 600; }
.facts { display: flex; flex-wrap: wrap; gap: .1rem 2rem; } .facts div { display: flex; gap: 0 .6rem; } .facts dt { flex: none; color: var(--soft); } .facts div, .facts dd { min-width: 0; } .facts dd { margin: 0; font-weight: 600; } .facts code { overflow-wrap: anywhere; }
.working li { white-space: pre-line; font-family: var(--mono); font-size: .8125rem; margin: .4rem 0; } .what a, .what > span:not(.state) { font-family: var(--mono); } .short { color: var(--soft); } summary { cursor: pointer; width: fit-content; padding: .1rem 0; }
.marks { position: absolute; } .margin-bar { width: 300px; max-width: 100%; vertical-align: middle; fill: currentColor; font-size: 11px; font-weight: 400; } .contains-task-list { list-style: none; padding-left: 1rem; }
.caution { border: 4px double var(--ink); padding: 0 1rem .25rem; margin: 1rem 0; break-inside: avoid; } .caution ul { padding-left: 1.25rem; } .caution h2 { border: 0; margin: .75rem 0 0; } .caution li { max-width: 80ch; }
.formulas > li { margin-bottom: 1rem; } .formulas p { margin: .15rem 0; } .symbols { columns: 18rem; list-style: none; padding: 0; } .symbols li { break-inside: avoid; } sub { line-height: 0; } msub > :nth-child(2) { position: relative; top: .22em; } math[display="block"] { margin: .5rem 0; padding-bottom: .3em; overflow-x: auto; text-align: left; width: fit-content; max-width: 100%; font-size: 1.15rem; }
.topic > summary :is(h2, h3) { display: inline; margin: 0; border: 0; font-size: 1.05rem; } .topic > summary { color: var(--soft); padding: .3rem 0; } .topic :is(h2, h3) { color: var(--ink); }
.example { border: 1px solid var(--line); padding: .25rem .9rem; margin: .5rem 0; } .example > summary { padding: .3rem 0; }
.search label { display: block; font-weight: 600; } input, button { font: inherit; color: inherit; background: var(--paper); border: 2px solid var(--line); padding: .4rem .6rem; max-width: 100%; } input { width: 30rem; } button { cursor: pointer; } .found li { margin: .4rem 0; }
.prose img { max-width: 100%; height: auto; } .quote button { border: 0; border-bottom: 2px dotted var(--link); background: none; padding: 0; }
[popover] { color: var(--ink); background: var(--paper); border: 2px solid var(--ink); padding: 1rem; max-width: min(40rem, 92vw); white-space: pre-line; font: .875rem/1.5 var(--mono); }
.notice { font-size: 1.5rem; line-height: 1.3; font-weight: 800; border: .35rem double var(--ink); padding: .4rem .9rem; width: fit-content; max-width: 100%; }
.states { font-size: 1.2rem; } footer { color: var(--soft); font-size: .875rem; padding: 1rem 0; }
@page { margin: 14mm 12mm 16mm; @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
@media print { :root { color-scheme: light; --ink: #000; --soft: #333; --paper: #fff; --wash: #fff; --line: #666; --link: #000; } html { font-size: 9.5pt; } body { max-width: none; padding: 0; }
  .menu, .skip, .contents, .download, details:not([open], .topic) { display: none; } summary { list-style: none; } .quote button { border: 0; } main { border: 0; outline: 0; } .title { border: 2px solid #000; } .body { padding: 0; } a { text-decoration: none; }
  .wide { overflow: visible; } table { width: 100%; font-size: 8pt; } th, td { padding: .15rem .35rem; } tbody th code, td:has(> math) ~ td { overflow-wrap: anywhere; } td math[display="block"] { font-size: 8pt; } .schedule { margin-top: .9rem; } .schedule.many :is(th, td) { font-size: 6.5pt; padding: .1rem .2rem; } .schedule.many :is(td, th):last-child { overflow-wrap: anywhere; } .schedule th, .schedule td { padding: .1rem .2rem; } .schedule thead th { max-width: 7em; } .cables tbody th { min-width: 4.8em; } .figures table { table-layout: fixed; } .figures thead th { white-space: normal; overflow-wrap: anywhere; } thead { display: table-header-group; } tr, figure, svg, .caution, .kept, .prose ul, .prose ol, .prose table, .sign { break-inside: avoid; } .prose li, .working li { break-inside: avoid; } .example .check { break-inside: auto; } small, .what, .rests, .working, .working li, .margin-bar, .block dt { font-size: 8pt; } pre { white-space: pre-wrap; } p, li { orphans: 2; widows: 2; } }
`;
