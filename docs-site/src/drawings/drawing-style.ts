/** Look of the drawings on a page; on their own they carry the same as attributes. */
export const drawingStyle = `.drawn { margin: 1.5rem 0; } .drawn figcaption { font-size: .875rem; }
.drawing { display: block; height: auto; max-width: 100%; min-width: 38rem; color: var(--ink); }
.drawing .paper, .drawing .node { fill: var(--paper); }
@media screen and (prefers-color-scheme: dark) { .drawing :is(path, rect, line).series-0 { stroke: #4aa3df; } .drawing polygon.series-0, .drawing .dot.series-0 { fill: #4aa3df; stroke: none; } }
@media screen and (max-width: 42rem) { .drawn figcaption::before { content: "The drawing scrolls sideways. "; } }
@media print { .drawing { min-width: 0; max-height: 235mm; } .drawn { break-inside: avoid; } .drawn figcaption { display: none; } }
`;
