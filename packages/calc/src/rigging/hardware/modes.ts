import type { Method } from "../../register/method.js";
import type { SourceId } from "../../sources/index.js";

/** What a sling is made of. */
export type SlingMaterial = "wire-rope" | "chain" | "textile";
/** How it is put round the load or the structure. */
export type SlingMode = "straight" | "choke" | "basket";

interface ModeFactor {
  readonly share: number;
  readonly source: SourceId;
}

/**
 * Share of the working load that is marked on a sling by how it is used. Factors differ by standard, and are never
 * mixed: a wire rope chokes with 0.75 in American print and 0.8 in European, chain with 0.8 in European and 0.75 in
 * Australian print; where the American figure was not seen in print the lower published one stands. A basket counts
 * twice only for textile slings, where print says so with both legs upright; for the others the legs and what they bear
 * on have to be shown first, so it counts as one leg.
 */
export const slingModeFactors: Readonly<
  Record<"us" | "iec", Readonly<Record<SlingMaterial, Readonly<Record<Exclude<SlingMode, "straight">, ModeFactor>>>>>
> = {
  us: {
    "wire-rope": { choke: { share: 0.75, source: "choker-us" }, basket: { share: 1, source: "practice" } },
    chain: { choke: { share: 0.75, source: "as-3775" }, basket: { share: 1, source: "practice" } },
    textile: { choke: { share: 0.8, source: "en-1492-2" }, basket: { share: 2, source: "en-1492-2" } },
  },
  iec: {
    "wire-rope": { choke: { share: 0.8, source: "en-13414-1" }, basket: { share: 1, source: "practice" } },
    chain: { choke: { share: 0.8, source: "chain-slings-en" }, basket: { share: 1, source: "practice" } },
    textile: { choke: { share: 0.8, source: "en-1492-2" }, basket: { share: 2, source: "en-1492-2" } },
  },
};

/** What counts where nobody says what the sling is made of: the least of the published factors, and one leg. */
export const unknownSling = {
  choke: { share: 0.75, source: "practice" },
  basket: { share: 1, source: "practice" },
} as const;

/** Share of a sling's marked working load, and where it comes from. */
export function slingModeFactor(
  mode: SlingMode,
  material: SlingMaterial | undefined,
  practice: "us" | "iec",
): ModeFactor {
  if (mode === "straight") return { share: 1, source: "arithmetic" };
  return material === undefined ? unknownSling[mode] : slingModeFactors[practice][material][mode];
}

/** Breaking strength over working load that the standards ask of a part at least, by what it is. */
export const leastCoefficients: Readonly<
  Record<
    SlingMaterial | "hardware",
    { readonly us: number; readonly iec: number; readonly source: SourceId; readonly fromMemory?: "us" }
  >
> = {
  "wire-rope": { us: 5, iec: 5, source: "ec-2006-42-4.1.2.5" },
  chain: { us: 4, iec: 4, source: "ec-2006-42-4.1.2.5" },
  // 5 is what American slings are made to (ASME B30.9, from memory: it fails nothing); the European coefficient is 7.
  textile: { us: 5, iec: 7, source: "ec-2006-42-4.1.2.5", fromMemory: "us" },
  hardware: { us: 4, iec: 4, source: "ec-2006-42-4.1.2.5" },
};

export const modeMethods: readonly Method[] = [
  {
    name: "slingModeFactor",
    title: "Share of a sling's working load by how it is used",
    of: slingModeFactor,
    units: "mode, material, practice → share",
    sources: ["choker-us", "en-13414-1", "chain-slings-en", "as-3775", "en-1492-2", "practice"],
    validity: "angle of choke at least 120°, legs of a basket upright",
    example: {
      asks: "a wire rope choked, American and European; a textile sling in a basket; a chain choked in Europe",
      got: () => [
        slingModeFactor("choke", "wire-rope", "us").share,
        slingModeFactor("choke", "wire-rope", "iec").share,
        slingModeFactor("basket", "textile", "iec").share,
        slingModeFactor("choke", "chain", "iec").share,
      ],
      gives: [0.75, 0.8, 2, 0.8],
      from: "choker charts; EN 13414-1 Table 4 (endless 1.6 on two parts); EN 1492-2; chain sling manuals to EN 818-4",
    },
  },
];
