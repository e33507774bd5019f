/** Look of the drawings on a page; on their own they carry the same as attributes. */
export const drawingStyle = `.drawn { margin: 1.5rem 0; } .drawn figcaption { font-size: .875rem; } .drawn.compact { display: inline-block; vertical-align: top; margin-right: 2rem; max-width: 100%; }
.drawing { display: block; height: auto; max-width: 100%; min-width: 38rem; color: var(--ink); } .drawing.compact { min-width: 0; }
.from-right { direction: rtl; } .from-right > * { direction: ltr; margin-left: auto; } .hint { display: none; color: var(--soft); font-size: .875rem; margin: 0; }
.drawing .paper, .drawing .node { fill: var(--paper); }
@media screen and (prefers-color-scheme: dark) { .drawing :is(path, rect, line).series-0 { stroke: #4aa3df; } .drawing polygon.series-0, .drawing .dot.series-0 { fill: #4aa3df; stroke: none; } }
@media screen and (min-width: 60rem) { .drawn.compact { width: calc(50% - 2.5rem); } }
@media screen and (max-width: 42rem) { .hint { display: block; } }
@media print { .drawing { min-width: 0; max-width: none; max-height: 245mm; } .drawn, .drawn.compact { break-inside: avoid; margin: .6rem 0; } .drawn.compact { margin-right: .4mm; } .drawn figcaption { display: none; } }
`;
