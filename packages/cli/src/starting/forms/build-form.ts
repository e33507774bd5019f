import { type SchemaNode, schemas } from "@plumbmark/core";
import { linesOfKeys } from "./lines-of-keys.js";

const root = schemas.buildSchema as SchemaNode;

/** What is known of the house before a build is begun. */
export interface BuildFacts {
  readonly name: string;
  /** Name of a survey, or a text; undefined where there is none to choose. */
  readonly venue?: string | undefined;
  readonly practice?: string | undefined;
  /** A panel of the catalogue; undefined where there is none. */
  readonly panel?: string | undefined;
  readonly sections: readonly string[];
}

/** Written otherwise, written by a command, or written another way today. */
const WRITTEN = new Set([
  "build",
  "title",
  "revision",
  "status",
  "venue",
  "practice",
  "faces",
  "approved",
  "approved-by",
]);

const titleOf = (name: string): string => {
  const words = name.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
};

const ASKED: Readonly<Record<string, string>> = {
  Scope:
    "What the display shows, to whom, and for how long. Quote a figure by its path: [weight](calc:faces.face.mass).",
  Cautions: "What can hurt somebody here, and who was told. See the usual cautions on the published sheet.",
  "Lift plan": "Who lifts what from where to where, with whom on which rope or motor; who says stop.",
  "Power-up": "Who energises what, in which order, and what is looked at before the next step.",
  "Load-out":
    "Who opens and locks which breaker before a plug is touched; in which order it comes down; who counts it back.",
  "Sign-off": "Who hands over to whom.",
};

const section = (title: string): string => `## ${title}\n\n<!-- ${ASKED[title] ?? "What has to be said here."} -->\n`;

/** A new build document: what is known, and every other key with what it means and where it is found. */
export function buildForm({ name, venue, practice, panel, sections }: BuildFacts): string {
  const face = root.$defs?.face ?? {};
  const part = panel ?? "PANEL";
  return `---
build: ${name}
title: ${titleOf(name)}
revision: 1
status: draft                    # draft, then for-build once every question below is answered
${venue === undefined ? "#venue:                  # where it stands: the name of a survey, or a text" : `venue: ${venue}`}
${practice === undefined ? "#practice:               # us or iec" : `practice: ${practice}`}
# Take the # in front of a key away when you write its value. What is not written down is asked for, and never guessed;
# a figure that is a guess carries a question mark behind its unit, as in \`70 ft ?\`.
${linesOfKeys(root, root, "", practice, WRITTEN).join("\n")}
faces:
  face:
    panel: ${part}${panel === undefined ? "                 # a panel of the parts catalogue" : ""}
    columns: 4
    rows: 1
    support: flown               # flown, stacked, wall or deck
${linesOfKeys(face, root, "    ", practice, new Set(["panel", "columns", "rows", "support"])).join("\n")}
---

# ${titleOf(name)}

${sections.map(section).join("\n")}`;
}
