import { apparentPower, type Kind, type Value } from "@plumbmark/calc";
import { choices } from "../../document/nearest.js";
import { placeName } from "../../document/place-name.js";
import type { Part } from "../../repository/parts.js";
import { once } from "../reading/once.js";
import { partValue } from "../reading/reader.js";
import type { Circuit } from "./circuit.js";
import type { PowerDesign } from "./power-design.js";

/** Most a device draws by its part, W or VA: on its own, or beside its factor and what else is told of its power. */
export function devicePower(part: Part | undefined, label: string): Value {
  const apart = part?.data.power !== null && typeof part?.data.power === "object";
  return partValue(part, apart ? "power.maximum" : "power", "power", "maximum power", label);
}

/** A processor, source or converter, with a supply of its own unless its part says `power: none`. */
export class Device {
  /** What messages call it. */
  readonly label: string;

  constructor(
    readonly build: PowerDesign,
    /** Where it is named: `data.processor`, `picture.path.3`. */
    readonly path: string,
    readonly part: Part,
  ) {
    this.label = `${this.part.name} at ${this.build.reader.text(`${path}.place`) ?? "a place that is not written down"}`;
  }

  /** Name of the place it stands at; undefined when none is written. */
  get stands(): string | undefined {
    const written = this.build.reader.text(`${this.path}.place`);
    return written === undefined ? undefined : placeName(written);
  }

  /** Whether its part says it takes no power of its own. */
  get takesNone(): boolean {
    return this.part.data.power === "none";
  }

  /** Whether its part says anything of its power. */
  get saysPower(): boolean {
    return this.part.data.power !== undefined;
  }

  /** Most it draws, W or VA. */
  get maximum(): Value {
    return devicePower(this.part, this.label);
  }

  /** The same in VA. Watts need their factor: without it they would count as fewer volt-amperes than they may be. */
  get load(): Value<"apparent-power"> {
    const { maximum } = this;
    if (maximum.known && maximum.kind === "apparent-power") return maximum as Value<"apparent-power">;
    return apparentPower.of({ P: maximum, pf: this.#of("factor", "factor", "power factor") });
  }

  /** Its switch-on current, A peak. */
  get inrush(): Value<"current"> {
    return this.#of("inrush", "current", "inrush current");
  }

  /** What leaks from it to earth, A. */
  get leakage(): Value<"current"> {
    return this.#of("leakage", "current", "leakage current");
  }

  /** Circuits that name it, else those that serve its place; one of them it is on. */
  get circuits(): readonly Circuit[] {
    return once(this, "circuits", () => {
      const { circuits } = this.build;
      const names = [this.path, placeName(this.part.name)];
      const naming = circuits.filter(({ serves }) => serves.some((each) => names.includes(each)));
      const { stands } = this;
      return naming.length > 0 || stands === undefined
        ? naming
        : circuits.filter(({ serves }) => serves.includes(stands));
    });
  }

  #of<const K extends Kind>(key: string, kind: K, what: string): Value<K> {
    return partValue(this.part, `power.${key}`, kind, what, this.label);
  }
}

const KINDS: readonly string[] = ["processor", "converter", "source"];

/** The processor, and the sources and converters of the picture path; a processor at the end of the path counts once. */
export function devicesOf(build: PowerDesign & { readonly processor: Part | undefined }): readonly Device[] {
  const { reader, processor } = build;
  const path = reader.list("picture.path").flatMap((_, index) => {
    const at = `picture.path.${index + 1}`;
    const part = reader.parts.get(reader.text(`${at}.part`) ?? "");
    const again = part?.kind === "processor" && processor !== undefined;
    return part && KINDS.includes(part.kind) && !again ? [new Device(build, at, part)] : [];
  });
  return [...(processor ? [new Device(build, "data.processor", processor)] : []), ...path];
}

/** Whether anything of the build is what an entry under `serves` names: a place something stands at, or a device. */
const isThere = (build: PowerDesign, name: string): boolean =>
  build.devices.some(({ stands, path, part }) => [stands, path, placeName(part.name)].includes(name));

/** Complains about places and devices circuits say they serve and the build does not have. */
export function checkServed(build: PowerDesign): void {
  const { reader } = build;
  const known = build.devices.flatMap(({ stands, part }) => [...(stands === undefined ? [] : [stands]), part.name]);
  for (const { path, serves } of build.circuits)
    for (const [index, name] of serves.entries())
      if (!isThere(build, name))
        reader.complain(
          `${path}.serves.${index + 1}`,
          `Nothing of the build stands at \`${name}\`, and no device is called so.`,
          known.length > 0
            ? choices([...new Set(known)], name)
            : "Write the devices with their places, under `data.processor` and `picture.path`.",
        );
}
