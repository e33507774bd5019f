import { readQuantity } from "@plumbmark/calc";
import { Trouble } from "../terminal/trouble.js";

export interface DraftOptions {
  readonly as: "text" | "json" | "markdown";
  readonly option?: string;
  readonly to?: string;
  readonly replace?: boolean;
  readonly every?: boolean;
  readonly pairs?: boolean;
  readonly together?: boolean;
  readonly sheet?: string;
  /** A build that stands, to be laid out in another size. */
  readonly like?: string;
  readonly width?: string;
  readonly height?: string;
  /** The face that is meant, of a build that has several. */
  readonly face?: string;
  readonly within?: string;
  readonly standard?: string;
}

/** How long the search may take, in milliseconds. @throws Trouble */
export function limitOf(within: string | undefined): number | undefined {
  if (within === undefined) return undefined;
  const read = readQuantity(within, ["time"]);
  if (read.ok && read.quantity.value > 0) return read.quantity.value * 1000;
  throw new Trouble(`\`--within ${within}\` is no time.`, "Write a time such as `5 s`.");
}

/** Number of the option that is to be written. @throws Trouble */
export function optionNumber({ option, to }: DraftOptions): number | undefined {
  if (option === undefined && to === undefined) return undefined;
  if (option === undefined) throw new Trouble("Which option is to be written is not said.", "Add `--option 1`.");
  if (to === undefined)
    throw new Trouble("Where the option is to be written is not said.", "Add `--to builds/NAME.md`.");
  const number = Number(option);
  if (Number.isInteger(number) && number >= 1) return number;
  throw new Trouble(
    `\`--option ${option}\` is the number of no option.`,
    "Write its number in the table: `--option 1`.",
  );
}

/** What is asked of a build that stands is asked of nothing else. @throws Trouble */
export function refuseWithoutLike({ like, width, height, face }: DraftOptions): void {
  if (like !== undefined) return;
  const [without] = Object.entries({ width, height, face }).find(([, value]) => value !== undefined) ?? [];
  if (without === undefined) return;
  throw new Trouble(
    `\`--${without}\` is asked of a build that stands, and none is named.`,
    without === "face" ? "Add `--like BUILD`." : "Add `--like BUILD`, or write `size` in the wish.",
  );
}
