import type { Quote } from "../document/body/quotes.js";
import { choices } from "../document/nearest.js";
import type { Design } from "./design.js";

/** A link of the prose to a drawing. */
export interface DrawingLink extends Quote {
  /** Whether the build has such a drawing. */
  readonly known: boolean;
  /** The drawings it has, the nearest name first. */
  readonly mend: string;
}

const PREFIX = "drawings.";
const LAYERS = ["power-audience", "power-rear", "data-audience", "data-rear"];

/** Names of the drawings a build has; those of a face, bar or circuit hold its name. */
export function drawingNames({ bars, faces, circuits, picture, reader }: Design): readonly string[] {
  return [
    ...bars.flatMap(({ name, planPlace: place, length }) => [
      `hang-plot-${name}`,
      ...(place?.structure.known && place.left.known && length.known ? [`hang-plan-${name}`] : []),
    ]),
    ...faces.filter(({ stand }) => stand).map(({ name }) => `stand-${name}`),
    ...faces
      .filter(({ cells }) => cells.length > 0)
      .flatMap(({ name }) => LAYERS.map((layer) => `face-${name}-${layer}`)),
    ...circuits.map(({ name }) => `one-line-${name}`),
    ...(picture.hops.length > 0 ? ["picture-path"] : []),
    ...(reader.has("picture") && faces.length > 0 ? ["raster"] : []),
    ...faces.map(({ name }) => `sightlines-${name}`),
  ];
}

/** Every link of the prose to `calc:drawings.`, known or not. */
export function drawingLinks(build: Design & { readonly quotes: readonly Quote[] }): readonly DrawingLink[] {
  const names = drawingNames(build);
  return build.quotes
    .filter(({ of }) => of.startsWith(PREFIX))
    .map((quote) => {
      const name = quote.of.slice(PREFIX.length);
      return { ...quote, known: names.includes(name), mend: choices(names, name) };
    });
}
