import type { CheckEntry, Data, Part } from "@plumbmark/core";
import { type Brief, partsInUnits, partsOfKind } from "../brief.js";
import { textsOf } from "../data.js";
import type { Scheme } from "./decision.js";
import { takesTurned } from "./size.js";

/** What hangs the bar, as the catalogue has it: assemblies, each a list of parts. */
export interface HangAssembly {
  readonly name: string;
  readonly of: Data;
  readonly parts: readonly string[];
}

/** Assemblies of the catalogue, those of parts that are made in the units of the build first. */
function assembliesOf(brief: Brief): readonly HangAssembly[] {
  const order = ["rope", "hardware"].flatMap((kind) => partsInUnits(brief, kind).map(({ name }) => name));
  const rank = ({ parts }: { readonly parts: readonly string[] }): number =>
    parts.reduce((sum, name) => sum + Math.max(0, order.indexOf(name)), 0) / Math.max(1, parts.length);
  return partsOfKind(brief, "assembly")
    .map((part) => ({ name: part.name, of: part.name, parts: textsOf(part.data, "of") }))
    .sort((a, b) => rank(a) - rank(b));
}

/** What a bar is made of and hangs by. */
export interface Hardware {
  readonly section: Part;
  readonly hungBy: Part | undefined;
  readonly assembly: HangAssembly | undefined;
  readonly second: HangAssembly | undefined;
}

/** Sections, attachments and assemblies the catalogue has for a bar, the plainest first. */
export function* hardwareOf(brief: Brief, scheme: Scheme): Generator<Hardware> {
  const { panel, rotated } = scheme;
  const takes = (part: Part): boolean => {
    const { takes: list } = part.data;
    return (!Array.isArray(list) || list.includes(panel)) && (rotated === undefined || takesTurned(rotated)(part));
  };
  const attachments = partsInUnits(brief, "attachment").filter(takes);
  const all = assembliesOf(brief);
  const over = brief.wish.overPeople ?? true;
  // What goes round a structure and down to the bar has more rope in it than what hangs the bar.
  const ropeIn = ({ parts }: HangAssembly): number =>
    parts.reduce((sum, name) => sum + (brief.catalogue.parts.get(name)?.quantities.get("length")?.value ?? 0), 0);
  const secondsFor = (main: HangAssembly | undefined): readonly HangAssembly[] => {
    const short = (each: HangAssembly): number => (main && ropeIn(each) <= ropeIn(main) ? 1 : 0);
    return all.filter((each) => each !== main).sort((a, b) => short(a) - short(b));
  };
  for (const assembly of all.length > 0 ? all : [undefined])
    for (const section of partsInUnits(brief, "bar"))
      for (const hungBy of attachments.length > 0 ? attachments : [undefined])
        for (const second of over && all.length > 0 ? secondsFor(assembly) : [undefined])
          yield { section, hungBy, assembly, second };
}

/** What does not fit together does not on any other points either. */
export interface Useless {
  readonly assemblies: Set<string>;
  readonly seconds: Set<string>;
  /** Section and attachment. */
  readonly pairs: Set<string>;
  /** Section and assembly. */
  readonly fits: Set<string>;
}

const pairOf = ({ section, hungBy }: Hardware): string => `${section.name} ${hungBy?.name ?? ""}`;

const fitOf = ({ section, assembly }: Hardware): string => `${section.name} ${assembly?.name ?? ""}`;

export const isUseless = ({ assemblies, seconds, pairs, fits }: Useless, hardware: Hardware): boolean =>
  assemblies.has(hardware.assembly?.name ?? "") ||
  seconds.has(hardware.second?.name ?? "") ||
  pairs.has(pairOf(hardware)) ||
  fits.has(fitOf(hardware));

export function noteUseless(useless: Useless, hardware: Hardware, fails: readonly CheckEntry[]): void {
  const { assembly, second } = hardware;
  for (const { rule, at } of fails) {
    const isSecond = at.path.includes(".second");
    // A collar is too wide or too narrow for the bar, and what hangs from it is all the same for another.
    if (rule === "rigging.fit") useless.fits.add(fitOf(hardware));
    else if (rule === "rigging.attachment" || rule === "rigging.column-depth") useless.pairs.add(pairOf(hardware));
    else if (second && isSecond && rule === "rigging.reach") useless.seconds.add(second.name);
    else if (assembly && (rule === "rigging.reach" || rule === "rigging.head-room"))
      useless.assemblies.add(assembly.name);
  }
}

export const nothingUseless = (): Useless => ({
  assemblies: new Set(),
  seconds: new Set(),
  pairs: new Set(),
  fits: new Set(),
});
