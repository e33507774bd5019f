import { connectors, sections } from "@plumbmark/calc";
import type { FileKind } from "../zone.js";

/** What a name is of. */
export type NameKind =
  | "build"
  | "wish"
  | "venue"
  | "face"
  | "supply"
  | "circuit"
  | "run"
  | "chain"
  | "bar"
  | "hang"
  | "part"
  | "lot"
  | "place"
  | "structure"
  | "point"
  | "surface"
  | "connector"
  | "section"
  | "rule";

/** Where a name stands, in one kind of file. */
export interface NamedAt {
  /** Steps from the top, `*` for any. */
  readonly path: readonly string[];
  readonly at: "key" | "value";
  readonly of: NameKind;
  /** Whether what is named is written there. */
  readonly defines?: true;
  /** Of a part: the kinds that belong there. */
  readonly kinds?: readonly string[];
  /**
   * More than the name: cells behind that of a face, a path that names are part of, the name of a hang with its bar,
   * that of a venue's point with its structure, or the ends of a route.
   */
  readonly form?: "cells" | "path" | "hang" | "point" | "route";
}

type More = Pick<NamedAt, "defines" | "kinds" | "form">;

const at =
  (where: NamedAt["at"]) =>
  (path: string, of: NameKind, more: More = {}): NamedAt => ({ path: path.split("."), at: where, of, ...more });
const key = at("key");
const value = at("value");
const DEFINES = { defines: true } as const;
const parts = (...kinds: readonly string[]): More => ({ kinds });

/** An entry of a list names a part by itself, or under `part`. */
const listed = (path: string, kinds: readonly string[] = []): readonly NamedAt[] => [
  value(`${path}.*`, "part", parts(...kinds)),
  value(`${path}.*.part`, "part", parts(...kinds)),
];

const HELD = ["hardware", "rope"];

const ofBuild: readonly NamedAt[] = [
  value("build", "build", DEFINES),
  value("venue", "venue"),
  key("faces.*", "face", DEFINES),
  value("faces.*.like", "face"),
  value("faces.*.panel", "part", parts("panel")),
  value("faces.*.place", "place"),
  value("faces.*.on", "surface"),
  value("faces.*.lot", "lot"),
  key("faces.*.lot.*", "lot"),
  value("faces.*.hung-by", "part", parts("attachment")),
  value("faces.*.hung-by.part", "part", parts("attachment")),
  key("faces.*.extras.*", "part"),
  key("faces.*.other-panels.*", "part", parts("panel")),
  key("power.supplies.*", "supply", DEFINES),
  key("power.circuits.*", "circuit", DEFINES),
  value("power.circuits.*.like", "circuit"),
  value("power.circuits.*.from", "supply"),
  value("power.circuits.*.at", "place"),
  value("power.circuits.*.outlet", "connector"),
  value("power.circuits.*.serves.*", "place"),
  key("power.runs.*", "run", DEFINES),
  value("power.runs.*.from", "circuit"),
  value("power.runs.*.feed.part", "part", parts("power-cable")),
  value("power.runs.*.jumper.part", "part", parts("power-cable")),
  value("power.runs.*.panels", "face", { form: "cells" }),
  value("data.processor.part", "part", parts("processor")),
  value("data.processor.place", "place"),
  key("data.chains.*", "chain", DEFINES),
  ...["feed", "jumper", "return"].map((cable) => value(`data.chains.*.${cable}.part`, "part", parts("data-cable"))),
  value("data.chains.*.panels", "face", { form: "cells" }),
  value("picture.path.*.part", "part", parts("source", "converter", "video-cable")),
  value("picture.path.*.place", "place"),
  key("picture.at.*", "face"),
  value("picture.at.*.copy-of", "face"),
  key("rigging.bars.*", "bar", DEFINES),
  value("rigging.bars.*.like", "bar"),
  value("rigging.bars.*.section", "section"),
  value("rigging.bars.*.carries.face", "face"),
  value("rigging.bars.*.carries.*.face", "face"),
  key("rigging.bars.*.hangs.*", "hang", DEFINES),
  value("rigging.bars.*.hangs.*.like", "hang"),
  ...["", ".bridle.left", ".bridle.right"].flatMap((holder) =>
    listed(`rigging.bars.*.hangs.*${holder}.assembly`, HELD),
  ),
  ...listed("rigging.bars.*.second.assembly", HELD),
  ...listed("rigging.secondary", HELD),
  key("rigging.letter.points.*", "hang", { form: "hang" }),
  key("rigging.bars.*.letter.points.*", "hang", { form: "hang" }),
  value("rigging.bars.*.under", "structure"),
  ...["", ".bridle.left", ".bridle.right"].map((holder) =>
    value(`rigging.bars.*.hangs.*${holder}.point`, "point", { form: "point" }),
  ),
  key("also-bring.*", "part"),
  value("waivers.*.rule", "rule"),
  value("waivers.*.where", "face", { form: "path" }),
];

const ofSurvey: readonly NamedAt[] = [
  value("survey", "venue", DEFINES),
  key("supplies.*", "supply", DEFINES),
  key("circuits.*", "circuit", DEFINES),
  value("circuits.*.like", "circuit"),
  value("circuits.*.from", "supply"),
  value("circuits.*.outlet", "connector"),
  value("circuits.*.at", "place"),
  key("places.*", "place", DEFINES),
  key("routes.*", "place", { form: "route" }),
  value("routes.*.via.*", "place"),
  key("structure.*", "structure", DEFINES),
  value("structure.*.like", "structure"),
  key("structure.*.points.*", "point", DEFINES),
  key("floors.*", "surface", DEFINES),
  key("walls.*", "surface", DEFINES),
];

const NAMED: Readonly<Record<FileKind, readonly NamedAt[]>> = {
  build: ofBuild,
  survey: ofSurvey,
  parts: [
    key("*", "part", DEFINES),
    value("*.takes", "part", parts("panel")),
    value("*.takes.*", "part", parts("panel")),
  ],
  stock: [key("lots.*", "lot", DEFINES), value("lots.*.panel", "part", parts("panel")), key("items.*", "part")],
  "house standard": [
    key("requirements.*", "rule"),
    key("rules.*", "rule"),
    key("own-rules.*", "rule", DEFINES),
    value("allows.*", "rule"),
  ],
  wish: [
    value("wish", "wish", DEFINES),
    value("venue", "venue"),
    // The few facts of a venue that has no survey are written as in one.
    ...ofSurvey.filter(({ of }) => of !== "venue").map((each) => ({ ...each, path: ["venue", ...each.path] })),
    value("over.under", "structure"),
    value("over.on", "surface"),
    value("out-of", "lot"),
    value("panel", "part", parts("panel")),
    value("feed-from.power.*", "circuit"),
    value("feed-from.data", "place"),
    value("feed-from.picture", "place"),
  ],
};

const fits = (steps: readonly string[], pattern: readonly string[]): boolean =>
  steps.length === pattern.length && pattern.every((step, index) => step === "*" || step === steps[index]);

/** Whose name stands at a path; undefined where none does. */
export const nameAt = (kind: FileKind, where: "key" | "value", steps: readonly string[]): NamedAt | undefined =>
  NAMED[kind].find((each) => each.at === where && fits(steps, each.path));

/** Names that stand in the built-in tables. */
export const builtIn: Readonly<Partial<Record<NameKind, () => readonly string[]>>> = {
  connector: () => [...connectors.keys()],
  section: () => [...sections.keys()],
};
