import { type Content, h } from "../html/html.js";
import { linkTo } from "../pages/page.js";
import { lotPath } from "../site/lots.js";
import type { PublishedDocument } from "../site/published-document.js";

/** Out of which lot the panels of each face are taken: it stands on no panel's row, and is asked for at the shelf. */
export function lotsOfFaces({ build, page }: PublishedDocument): Content {
  if (!build || build.faces.length === 0) return undefined;
  const { lots } = build.context.stock;
  const named = (name: string): Content => {
    const lot = lots.get(name);
    const link = h("a", { href: linkTo(page, lotPath(name)) }, name);
    return [link, lot ? `, batch ${lot.batch ?? "not stated"}` : ", which is not in the stock list"];
  };
  const lines = build.faces.map((face): Content => {
    const own = face.lots;
    const from = own.length === 0 ? "not stated" : own.map((name, index) => [index > 0 ? " and " : "", named(name)]);
    return [`Panels and spares of face ${face.name} are from lot: `, from, ". "];
  });
  return h("p", { class: "said" }, lines);
}
