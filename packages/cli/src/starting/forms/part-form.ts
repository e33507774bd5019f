import { type SchemaNode, schemas } from "@plumbmark/core";
import { linesOfKeys } from "./lines-of-keys.js";

const root = schemas.partsSchema as SchemaNode;

/** The schema of each kind of part, by the kind. */
const kinds: ReadonlyMap<string, SchemaNode> = new Map(
  Object.values(root.$defs ?? {}).flatMap((node) => {
    const kind = node.properties?.kind?.const;
    return typeof kind === "string" ? [[kind, node] as const] : [];
  }),
);

/** The kinds of part there are. */
export const partKinds: readonly string[] = [...kinds.keys()];

/** A form for one part: every key of its kind, what it means, what may stand there and where it is found. */
export function partForm(name: string, kind: string, practice?: string): string {
  const node = kinds.get(kind) ?? {};
  // What a part is nothing without is a list, and stands there empty.
  const needed = (node.required ?? []).filter((key) => key !== "kind");
  const all = linesOfKeys(node, root, "  ", practice, new Set(["kind"]));
  const lines = all.map((line) =>
    needed.reduce((each, key) => each.replace(new RegExp(`^  #${key}: {4}`, "u"), `  ${key}: []  `), line),
  );
  return `# One part, from its maker's data sheet and from what is marked on it. Take the # in front of a key away when you
# write its value; leave what you do not know as it is: what is not written down is asked for, and never guessed. A
# figure that is a guess carries a question mark behind its unit, as in \`7.4 kg ?\`.
${name}:
  kind: ${kind}
${lines.join("\n")}
`;
}
