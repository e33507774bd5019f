import { FACE } from "../decide/size.js";
import { circuitsOf, fullest, hangsOf, MEASURES, panelsOf, staysHalf } from "./measure.js";
import type { Option } from "./option.js";

const PIXELS = `faces.${FACE}.pixels-wide`;

/** How much better an option is than any other in the measure it is best in; what is best in nothing comes last. */
function distinct(option: Option, all: readonly Option[]): number {
  const gains = MEASURES.map(({ better, of }) => {
    const own = of(option);
    if (own === undefined) return 0;
    const others = all
      .filter((each) => each !== option)
      .map(of)
      .filter((each): each is number => each !== undefined);
    if (others.length === 0) return 0;
    const best = better === "more" ? Math.max(...others) : Math.min(...others);
    const gain = better === "more" ? own - best : best - own;
    return gain / Math.max(Math.abs(best), Math.abs(own), 1e-9);
  });
  return Math.max(...gains);
}

/** The first, which is nearest to what was asked for, and of the others those that are best in something. */
export function chosen(
  all: readonly Option[],
  most: number,
): { readonly options: readonly Option[]; readonly trades: readonly string[] } {
  const [first, ...rest] = all;
  if (!first) return { options: [], trades: [] };
  const ranked = rest
    .map((option, index) => ({ option, index, gain: distinct(option, all) }))
    .sort((a, b) => b.gain - a.gain || a.index - b.index)
    .slice(0, most - 1)
    .sort((a, b) => a.index - b.index)
    .map(({ option }) => option);
  const options = [first, ...ranked];
  return { options, trades: options.map((option, index) => (index === 0 ? firstTrade(option) : trade(option, first))) };
}

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? "" : "s"}`;

function firstTrade(option: Option): string {
  const spread = circuitsOf(option);
  // Without a circuit that is known nothing is fed, and nothing of it was chosen.
  if (spread.length === 0 && hangsOf(option) === 0) return "Nearest to what was asked for.";
  return `Nearest to what was asked for, with the fewest circuits${hangsOf(option) > 0 ? " and hangs" : ""} that do${spread.length === 1 ? `; all of it goes dark when ${spread[0]} trips` : ""}.`;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** What is gained and what is paid for it against another option, in a sentence. */
export function trade(option: Option, against: Option): string {
  const gained: string[] = [];
  const paid: string[] = [];
  const panels = panelsOf(option) - panelsOf(against);
  const text = (of: Option, path: string): string => of.figures.get(path)?.text ?? "a raster not known";
  if (panels < 0) {
    gained.push(`${plural(-panels, "panel")} fewer`);
    paid.push(`${option.size} instead of ${against.size}`);
  } else if (panels > 0) {
    gained.push(`${option.size} instead of ${against.size}`);
    paid.push(`${plural(panels, "panel")} more`);
  }
  const [pixels, others] = [option, against].map((each) => each.figures.get(PIXELS)?.value);
  if (option.scheme.panel !== against.scheme.panel && pixels !== undefined && others !== undefined) {
    const words = `${text(option, PIXELS)} across instead of ${text(against, PIXELS)}`;
    if (pixels > others) gained.push(words);
    else if (pixels < others) paid.push(words);
    gained.push(`leaves ${against.scheme.lot ?? against.scheme.panel} on the shelf`);
  }
  const circuits = circuitsOf(option).length - circuitsOf(against).length;
  if (staysHalf(option) && !staysHalf(against)) gained.push("half of it stays lit when a circuit trips");
  if (circuits > 0) paid.push(`${plural(circuits, "circuit")} more and its feed`);
  if (circuits < 0) gained.push(`${plural(-circuits, "circuit")} fewer`);
  const [full, other] = [fullest(option), fullest(against)];
  if (circuits > 0 && full !== undefined && other !== undefined && full < other)
    gained.push(`the fullest circuit at ${percent(full)} instead of ${percent(other)}`);
  const hangs = hangsOf(option) - hangsOf(against);
  if (hangs > 0) {
    gained.push("less on the worst hang");
    paid.push(`${plural(hangs, "hang")} more to rig and to level`);
  } else if (hangs < 0) gained.push(`${plural(-hangs, "hang")} fewer`);
  const bought =
    option.shortfall.reduce((sum, { count }) => sum + count, 0) -
    against.shortfall.reduce((sum, { count }) => sum + count, 0);
  if (bought > 0) paid.push(`${plural(bought, "panel")} to buy`);
  if (bought < 0) gained.push(`${plural(-bought, "panel")} fewer to buy`);
  const [gain, price] = [gained.join(", "), paid.join(", ")];
  if (gain === "" && price === "") return "The same in every figure that is compared here.";
  if (price === "") return `${capital(gain)}.`;
  return gain === "" ? `Costs ${price}.` : `${capital(gain)}; for ${price}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
