import { leastOf, missing, type Value } from "@plumbmark/calc";
import { asMass } from "../reading/as-mass.js";
import type { Hang } from "./hang.js";
import type { RiggingDesign } from "./rigging-design.js";
import { Statement, type StatementCheck } from "./statement.js";

/** What the structure carries at one point, as the letter says it. */
export interface LetterPoint {
  /** What it carries at rest, as a mass; undefined where the letter does not say. */
  readonly structure: Value<"mass"> | undefined;
  /** What it bears when a load is caught there, as a mass; undefined where the letter does not say. */
  readonly catching: Value<"mass"> | undefined;
}

/** A rating as the letter says it and as it is written at the hang; of both the lesser. */
export function ratingOf(
  own: Value<"mass"> | undefined,
  point: LetterPoint | undefined,
  path: string,
  label: string,
): Value<"mass"> {
  const stated = point?.structure;
  if (own && stated) return leastOf([own, stated], "mass", "structure rating");
  return stated ?? own ?? missing("mass", { path, what: "structure rating", of: label });
}

/** The engineer's letter on what the structure carries. */
export class Letter extends Statement {
  constructor(
    readonly design: RiggingDesign,
    path = "rigging.letter",
  ) {
    super(design, path, "The letter on the structure");
  }

  /** Names a hang or a leg may go by: `header.H1.left`, `H1.left`; a short one only where it means no other bar's. */
  #names(hang: Hang, side: string): readonly string[] {
    const alone = this.design.bars.flatMap(({ hangs }) => hangs).filter(({ name }) => name === hang.name).length === 1;
    return [`${hang.bar.name}.${hang.name}${side}`, ...(alone ? [`${hang.name}${side}`] : [])];
  }

  /** What it says of a hang, or of one leg of its bridle; undefined where it does not name it. */
  point(hang: Hang, side: "" | ".left" | ".right" = ""): LetterPoint | undefined {
    const { reader } = this.design;
    const known = reader.keys(`${this.path}.points`);
    const name = this.#names(hang, side).find((each) => known.includes(each));
    if (name === undefined) return undefined;
    const path = `${this.path}.points.${name}`;
    const rating = (key: string, what: string): Value<"mass"> | undefined => {
      const found: Value | undefined = reader.optional(`${path}.${key}`, "mass", what, hang.label);
      return found && asMass(found);
    };
    return {
      structure: rating("structure", "structure rating"),
      catching: rating("catch", "rating for a caught load"),
    };
  }

  /** The rating that is written at the hang or the leg itself, as a mass; undefined where none is. */
  writtenAt(hang: Hang, side: "" | ".left" | ".right" = ""): Value<"mass"> | undefined {
    const path = `${hang.path}${side === "" ? "" : `.bridle${side}`}.structure`;
    const found: Value | undefined = this.design.reader.optional(path, "mass", "structure rating", hang.label);
    return found && asMass(found);
  }

  /** What is asked of the letter besides its points. */
  get counting(): readonly StatementCheck[] {
    const [counted, others] = [this.text("counted"), this.text("other-loads")];
    const at = (key: string) => ({ path: `${this.path}.${key}` });
    return [
      counted === undefined
        ? {
            ...at("counted"),
            holds: undefined,
            says: `${this.label}: whether the points carry that together is not written down.`,
            mend: `Ask who signs it, and write \`together\` or \`one-at-a-time\` under \`${this.path}.counted\`.`,
          }
        : { ...at("counted"), holds: true, says: `${this.label}: the points are counted ${counted}.`, mend: "" },
      others === "included"
        ? { ...at("other-loads"), holds: true, says: `${this.label}: what else hangs there is counted in.`, mend: "" }
        : {
            ...at("other-loads"),
            holds: undefined,
            says:
              others === undefined
                ? `${this.label}: whether what else hangs on the structure is counted in is not written down.`
                : `${this.label}: what else hangs on the structure is not counted in, so what is left for the build cannot be told.`,
            mend: `Have the letter count in what else hangs there, and write \`other-loads: included\` under \`${this.path}\`.`,
          },
    ];
  }
}
