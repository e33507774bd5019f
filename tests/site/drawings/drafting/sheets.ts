import { readSurvey, type Survey } from "@plumbmark/core";
import { type Drawing, drawingsOf } from "@plumbmark/docs-site";
import { elevationsOf } from "../../../../docs-site/src/drawings/elevation.js";
import { venuePlan } from "../../../../docs-site/src/drawings/venue-plan.js";
import { HALL } from "../../../venues/hall.js";
import { AWKWARD, awkward } from "../awkward.js";
import { drawnOf, treeOf } from "../one-document.js";
import type { Read } from "../read.js";
import { inspected } from "../repository.js";
import { documents } from "../to-size/by-hand.js";

/** A drawing as it lies on the table. */
export interface DraftedSheet {
  readonly name: string;
  /** What is drawn: `hang-plot-header`. */
  readonly kind: string;
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly drawing: Read;
}

export const FILES: readonly string[] = [
  ...documents.map(({ file }) => file),
  ...["odd", "far", "under", "kinds", "summer-stage", "lobby-ribbon"].map((name) => `builds/${name}.md`),
];

const sheetOf = (file: string, drawing: Drawing, read = treeOf(drawing)): DraftedSheet => ({
  name: `${file} ${drawing.name}`,
  kind: drawing.name,
  file,
  width: drawing.width,
  height: drawing.height,
  drawing: read,
});

/** The drawings of a build's sheet. */
export const sheets: readonly DraftedSheet[] = [
  ...FILES.flatMap((file) => drawnOf(file).map(({ drawing, read }) => sheetOf(file, drawing, read))),
  ...AWKWARD.flatMap((file) => drawingsOf(awkward(file)).map((drawing) => sheetOf(file, drawing))),
];

/** Documents whose faces are seen beside one another, all to one scale. */
export const COMPARED: readonly string[] = ["harbour-header", "small-screen", "gala-wall"].map(
  (name) => `builds/${name}.md`,
);

export const elevations: readonly DraftedSheet[] = elevationsOf(COMPARED.map(inspected)).flatMap((drawing, index) =>
  drawing ? [sheetOf(COMPARED[index] as string, drawing)] : [],
);

const plan = venuePlan(readSurvey({ path: "venues/ferry-hall.md", text: HALL }) as Survey, "us") as Drawing;

/** The same with those of other pages: elevations of a comparison, the plan of a venue. */
export const everySheet: readonly DraftedSheet[] = [...sheets, ...elevations, sheetOf("venues/ferry-hall.md", plan)];
