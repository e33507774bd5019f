/** Okabe–Ito colours, always beside a word and with a line of their own kind: colour alone carries nothing. */
export const style = `:root { --fails: #D55E00; --should: #E69F00; --note: #0072B2; --holds: #009E73; --waived: #CC79A7; --open: #6b6b6b; }
body { font: 1rem/1.5 system-ui, sans-serif; color: #111; background: #fff; max-width: 62rem; margin: 0 auto; padding: 0 1rem; overflow-wrap: break-word; }
header { display: flex; flex-wrap: wrap; gap: 0 2rem; justify-content: space-between; align-items: baseline; border-bottom: 2px solid #111; }
nav a { margin-left: 1rem; }
a { color: var(--note); }
.skip { position: absolute; left: -99rem; }
.skip:focus { position: static; }
h1, h2, h3 { line-height: 1.2; break-after: avoid; }
table { border-collapse: collapse; }
th, td { border: 1px solid #767676; padding: .25rem .6rem; text-align: left; vertical-align: top; }
caption { text-align: left; font-weight: bold; padding: .25rem 0; }
.wide { overflow-x: auto; }
.at-right { text-align: right; }
.whole { white-space: nowrap; }
.at-center { text-align: center; }
code, .formula { font-family: ui-monospace, monospace; }
.checks { list-style: none; padding: 0; }
.check { border-left: .5rem solid var(--open); padding: .1rem 1rem; margin: 0 0 1rem; break-inside: avoid; }
.contains-task-list { list-style: none; padding-left: 1rem; }
.check p, .check dl { margin: .25rem 0; }
.check dl div { display: flex; gap: 1rem; }
.check dt { flex: 0 0 6rem; color: #444; }
.check dd { margin: 0; min-width: 0; }
.check.holds { border-left: .25rem solid var(--holds); }
.check.fails { border-left-style: solid; border-color: var(--fails); }
.check.fails.should { border-left-style: double; border-color: var(--should); }
.check.fails.note { border-left-style: double; border-color: var(--note); }
.check.open { border-left-style: dashed; }
.check.waived { border-left-style: dotted; border-color: var(--waived); }
.verdict { border: .2rem solid var(--fails); padding: .1rem .5rem; white-space: nowrap; }
.verdict.holds { border-color: var(--holds); border-style: double; }
.caution { border: .3rem double #111; padding: 0 1rem; margin: 1rem 0; break-inside: avoid; }
.states { font-size: 1.25rem; }
footer { border-top: 1px solid #767676; margin-top: 2rem; font-size: .9rem; }
@page { margin: 15mm; }
@media print { nav, .skip { display: none; } body { max-width: none; font-size: 10pt; } .wide { overflow: visible; } }
`;
