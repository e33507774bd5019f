import { heat, sum, type Value } from "@plumbmark/calc";
import type { Piece } from "../../takeoff/piece.js";
import type { CountedDesign } from "./counted-design.js";
import { under, type ValueEntry } from "./entries.js";
import { areaOf, asPower, pixelsOf, typicalPower } from "./faces.js";

const counts = (pieces: readonly Piece[]): Value<"count"> =>
  sum(
    pieces.map(({ count }) => count),
    "count",
    "n",
  );

const masses = (pieces: readonly Piece[]): Value<"mass"> =>
  sum(
    pieces.map(({ mass }) => mass),
    "mass",
    "m",
  );

const powers = (pieces: readonly Piece[]): Value<"power"> =>
  sum(
    pieces.flatMap(({ power }) => (power ? [asPower(power)] : [])),
    "power",
    "P",
  );

/**
 * What the whole build comes to. Power and heat are those of the panels; what stands in the rack is told apart,
 * since circuits often carry it as other load. Masses are of everything that is in use, spares apart.
 */
export function totals(build: CountedDesign): readonly ValueEntry[] {
  const { faces, circuits, takeoff, bars } = build;
  const hung = new Set(bars.flatMap(({ carries }) => carries.map(({ face }) => face.name)));
  if (faces.length === 0) return [];
  const used = takeoff.pieces.filter(({ spare }) => !spare);
  const panels = used.filter(({ kind }) => kind === "panel");
  const others = used.filter(({ kind }) => kind !== "panel");
  return under("totals", {
    mass: () => masses(used),
    // What the house has to bear: what its structure bears of every bar, and what stands or leans.
    weight: () =>
      sum(
        [
          ...bars.map(({ onStructure }) => onStructure),
          ...faces.filter(({ name }) => !hung.has(name)).map(({ mass }) => mass),
        ],
        "mass",
        "W",
      ),
    "spares-mass": () => masses(takeoff.pieces.filter(({ spare }) => spare)),
    panels: () => counts(panels),
    spares: () => counts(takeoff.pieces.filter(({ spare }) => spare)),
    cables: () => counts(used.filter(({ kind }) => kind.endsWith("cable"))),
    pixels: () => sum(faces.map(pixelsOf), "pixels", "N"),
    area: () => sum(faces.map(areaOf), "area", "A"),
    "power-maximum": () => powers(panels),
    "power-typical": () => sum(faces.map(typicalPower), "power", "P"),
    "power-of-devices": () => powers(others),
    heat: () => heat.of({ P: faces.map((face) => asPower(face.powerMaximum)) }),
    "circuit-load": () =>
      circuits.length > 0
        ? sum(
            circuits.map(({ load }) => load),
            "apparent-power",
            "S",
          )
        : undefined,
  });
}
