import type { Build } from "../model/build.js";
import type { Face } from "../model/faces/face.js";
import { isSupport, SUPPORTS, type Support } from "./levels.js";

const kindsOf = (faces: readonly Face[]): readonly Support[] => {
  const found = new Set(faces.map(({ support }) => support).filter(isSupport));
  return SUPPORTS.filter((support) => found.has(support));
};

const inside = (path: string, { path: thing }: { readonly path: string }): boolean =>
  path === thing || path.startsWith(`${thing}.`);

const facesOf = (panels: readonly { readonly face: Face }[] | undefined): readonly Face[] => [
  ...new Set((panels ?? []).map(({ face }) => face)),
];

/**
 * How the faces are held that a thing serves: a circuit's are those of the panels on its runs. What is of the build
 * as a whole serves them all; a bar hangs.
 */
export function supportsAt(build: Build, path: string): readonly Support[] {
  const [group, kind, name] = path.split(".");
  if (group === "rigging" && kind === "bars") return ["flown"];
  if (group === "faces") return kindsOf(build.faces.filter((face) => inside(path, face)));
  if (group === "picture" && kind === "at") return kindsOf(build.faces.filter((face) => face.name === name));
  const run = build.runs.filter((each) => inside(path, each) || (each.circuit && inside(path, each.circuit)));
  const chain = build.chains.filter((each) => inside(path, each));
  const lines = [...run, ...chain];
  return kindsOf(lines.length > 0 ? lines.flatMap(({ panels }) => facesOf(panels)) : build.faces);
}
