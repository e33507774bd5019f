import { useNotice } from "@plumbmark/core";
import { cssText } from "../style/css-text.js";

/** Options side by side: their headings, drawings, sentences and figures each begin on one line. */
export const wishStyle = `.options { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr)); gap: 0 1.5rem; }
.option { display: grid; grid-row: span 4; grid-template-rows: subgrid; min-width: 0; border-top: 2px solid var(--ink); padding: .5rem 0 1rem; break-inside: avoid; } .option > * { min-width: 0; margin: .25rem 0; }
.option .state { font-weight: 400; font-size: .875rem; margin-left: .5rem; } .option > .drawn.compact { width: 100%; margin: 0; max-width: 30rem; } .option .drawing { width: 100%; }
.option dl { align-self: start; } .option dl div { display: grid; grid-template-columns: minmax(6.5rem, 2fr) 3fr; gap: 0 .75rem; border-top: 1px solid var(--line); padding: .15rem 0; } .option dt { color: var(--soft); } .option dd { margin: 0; font-weight: 600; min-width: 0; }
.held > div { min-width: 0; } @media screen and (min-width: 70rem) { .held { display: grid; grid-template-columns: minmax(38rem, 3fr) minmax(18rem, 2fr); gap: 0 2rem; } }
@media print { .options { grid-template-columns: repeat(auto-fit, minmax(55mm, 1fr)); gap: 0 5mm; } .option dl { font-size: 8pt; } .option .drawing { max-height: none; } }
`;

/** At the foot of every printed page of a draft: a loose one is to be known for what it is. */
export const draftFoot = `@page { @bottom-left { content: ${cssText(useNotice({ verdict: "draft", status: "draft" }) as string)}; font: bold 8pt sans-serif; width: 82%; } }\n`;
