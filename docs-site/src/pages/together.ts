import { type BuildsTogether, buildsTogether } from "@plumbmark/core";
import { type Content, h } from "../html/html.js";
import { table } from "../html/table.js";
import type { SiteWithDocuments } from "../site/site.js";

type Shortages = BuildsTogether["apart"][number]["short"];

const shortText = (short: Shortages): string =>
  short.map(({ lot, asked, count }) => `${lot}: ${asked} asked, ${count} there`).join("; ");

/** Which builds the stock can make at the same time, and which lot is short for those it cannot. */
export function togetherOf({ repository, documents, promises }: SiteWithDocuments): Content {
  const lotless = documents.filter((each) => each.lotless).map(({ entry }) => entry.file);
  if (promises.length === 0 && (lotless.length === 0 || repository.stock.lots.size === 0)) return [];
  const { never, apart, more, free, sets, unknown } = buildsTogether(promises, repository.stock, lotless);
  const titles = new Map(documents.map(({ entry, title }) => [entry.file, title]));
  const title = (file: string): string => titles.get(file) ?? file;
  const list = (files: readonly string[]): string => files.map(title).join(", ");
  const alone = never.map(({ build, short }) => [
    title(build),
    "nothing: the stock does not have it",
    shortText(short),
  ]);
  const pairs = apart.map(({ builds: [one, other], short }) => [title(one), title(other), shortText(short)]);
  const rows = [...alone, ...pairs];
  return [
    h("h2", "Builds at the same time"),
    ...(sets === undefined ? [h("p", "Too many builds share lots to list every set; the pairs are below.")] : []),
    ...(sets ?? []).map((set) => h("p", `Can stand at the same time: ${list([...set, ...free])}.`)),
    ...(sets?.length === 0 && free.length > 0 ? [h("p", `Can stand at the same time: ${list(free)}.`)] : []),
    ...(unknown.length > 0
      ? [h("p", `Cannot be told of ${list(unknown)}: a lot, or a number of panels or spares, is not written down.`)]
      : []),
    ...(rows.length > 0 ? [table("Cannot stand at the same time", ["Build", "With", "Lot that is short"], rows)] : []),
    ...(more ? [h("p", `More pairs than these ${pairs.length} cannot stand at the same time.`)] : []),
    h(
      "p",
      h(
        "small",
        "Panels and spares against the count of each lot, whatever the dates; sets are the largest there are.",
      ),
    ),
  ];
}
