import { partAnchor, partsOf } from "../pages/parts-page.js";
import { chaptersOf, keyAnchor, knownFiles } from "../pages/reference/known-files.js";
import { referencePath } from "../pages/reference/reference-page.js";
import type { DocumentSummary } from "../site/document-summary.js";
import { lotLines, lotPath } from "../site/lots.js";
import type { SiteWithDocuments } from "../site/site.js";
import { wishPaths } from "../wishes/wish-pages.js";
import type { SearchEntry } from "./options.js";

type Found = Omit<SearchEntry, "id">;

const build = ({
  entry,
  title,
  page,
  number,
  venue = "",
  onSite = "",
  preparedBy = "",
  approvedBy = "",
}: DocumentSummary): Found => {
  return {
    title,
    kind: "build",
    href: page,
    says: [`sheet ${number}`, entry.verdict, venue, onSite].filter((each) => each !== "").join(", "),
    words: [entry.build, entry.file, venue, preparedBy, approvedBy].join(" "),
  };
};

/** Every key of every kind of file, for whoever looks for what to write. */
const keys = (): readonly Found[] =>
  knownFiles.flatMap((file) =>
    chaptersOf(file).flatMap(({ groups }) =>
      groups.flatMap(({ fields }) =>
        fields.map(
          ({ path, title, description = "" }): Found => ({
            title: path.replaceAll("*", "NAME"),
            kind: "key",
            href: `${referencePath(file.name)}#${keyAnchor(path)}`,
            says: [title, file.title.replace("Keys of", "in")].filter((each) => each !== "").join(", "),
            words: `${path.replaceAll(".", " ")} ${title} ${description}`,
          }),
        ),
      ),
    ),
  );

/** Everything of the site that can be found: rules, builds, parts, lots, and keys that may be written. */
export function searchEntries(site: SiteWithDocuments): readonly SearchEntry[] {
  const rules = site.rules.map(
    (rule): Found => ({
      title: rule.id,
      kind: "rule",
      href: site.rulePaths.get(rule.id) ?? "",
      says: rule.states,
      words: `${rule.states} ${rule.why} ${rule.judged}`,
    }),
  );
  const parts = partsOf(site).map(
    ({ name, kind, file }): Found => ({
      title: name,
      kind: "part",
      href: `parts.html#${partAnchor(name)}`,
      says: `${kind}, in ${file}`,
      words: kind,
    }),
  );
  const lots = lotLines(site).map(
    ({ name, lot }): Found => ({
      title: name,
      kind: "lot",
      href: lotPath(name),
      says: lot ? `${lot.count} of ${lot.panel}, batch ${lot.batch ?? "not stated"}` : "not in the stock list",
      words: lot ? `${lot.panel} ${lot.batch ?? ""}` : "",
    }),
  );
  const paths = wishPaths(site.wishes ?? []);
  const wishes = (site.wishes ?? []).map(
    ({ file, title, venue = "", onSite = "" }): Found => ({
      title,
      kind: "wish",
      href: paths.get(file) ?? "",
      says: [venue, onSite].filter((each) => each !== "").join(", "),
      words: `${file} ${venue}`,
    }),
  );
  return [...rules, ...site.documents.map(build), ...wishes, ...parts, ...lots, ...keys()].map((each, id) => ({
    id,
    ...each,
  }));
}
