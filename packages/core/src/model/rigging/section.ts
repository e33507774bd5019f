import {
  allowableMoment,
  elasticModulus,
  isCompact,
  type Known,
  type LoadRow,
  missing,
  type PipeSection,
  restingOn,
  type SourceId,
  sections,
  tabled,
  tubePlasticModulus,
  tubeProperties,
  type Value,
} from "@plumbmark/calc";
import type { Part } from "../../repository/parts.js";
import { asMass } from "../reading/as-mass.js";
import { partValue } from "../reading/reader.js";

/** AISC's way and its factor are for steel; below this a bar's maker states the allowable moment. */
const STEEL = 190_000;

/** Strength and stiffness of a bar: the part's own figures first, then the published section it names. */
export class BarSection {
  readonly #published: PipeSection | undefined;

  constructor(
    readonly part: Part | undefined,
    name: string | undefined,
    readonly label: string,
  ) {
    const named = typeof part?.data.section === "string" ? part.data.section : name;
    this.#published = named === undefined ? undefined : sections.get(named);
  }

  get elasticity(): Value {
    return (
      this.#own("elasticity") ??
      this.#of((each) => tabled(each.modulus, "stress", each.source, `modulus of ${each.name}`)) ??
      partValue(this.part, "elasticity", "stress", "modulus of elasticity", this.label)
    );
  }

  get secondMoment(): Value {
    return (
      this.#own("second-moment") ??
      this.#of((each) => tabled(each.secondMoment, "second-moment", each.source, `second moment of ${each.name}`)) ??
      this.#ofTube()
    );
  }

  /** The tube attachments take hold of: the chord of a truss, else its own outside. */
  get grip(): Value<"length"> {
    const own = this.#own("chord") ?? this.#own("outside");
    if (own) return own as Known<"length">;
    const published = this.#of((each) => tabled(each.outside, "length", each.source, `outside of ${each.name}`));
    return (
      (published as Known<"length"> | undefined) ??
      partValue(this.part, "outside", "length", "outside diameter", this.label)
    );
  }

  /** Whether its maker states its strength by a load table. */
  get hasLoadTable(): boolean {
    return Array.isArray(this.part?.data.loads);
  }

  /** Rows of its maker's load table; none where it has no table. */
  get loadTable(): readonly LoadRow[] {
    const rows = this.part?.data.loads;
    if (!Array.isArray(rows)) return [];
    return rows.flatMap((_, index) => {
      const [span, uniform, centre] = ["span", "uniform", "centre"].map((key) =>
        this.#own(`loads.${index + 1}.${key}`),
      );
      if (!span || !uniform || !centre) return [];
      const mass = asMass(centre);
      return mass.known ? [{ span: span.value, uniform: uniform.value, centre: mass.value }] : [];
    });
  }

  /** Longest overhang beyond an outer hang that its table lets; undefined where its maker does not say. */
  get overhang(): Known<"length"> | undefined {
    return this.#own("overhang") as Known<"length"> | undefined;
  }

  /** The bending moment its maker states for every case; undefined where there is none. */
  get statedMoment(): Known<"moment"> | undefined {
    return this.#own("allowable-moment") as Known<"moment"> | undefined;
  }

  /** The shear its maker states for every case, as a mass; undefined where there is none. */
  get statedShear(): Value<"mass"> | undefined {
    const own = this.#own("allowable-shear");
    return own && asMass(own);
  }

  /** Elastic modulus: as published, else the second moment over half the outside diameter. */
  get elasticModulus(): Value<"section-modulus"> {
    const published = this.#own("second-moment")
      ? undefined
      : this.#of((each) => tabled(each.elastic, "section-modulus", each.source, `elastic modulus of ${each.name}`));
    if (published) return published as Known<"section-modulus">;
    const outside = partValue(this.part, "outside", "length", "outside diameter", this.label);
    return elasticModulus.of({ I: this.secondMoment, D: outside });
  }

  get yield(): Value {
    return (
      this.#own("yield") ??
      this.#of((each) => tabled(each.yield, "stress", each.source, `yield of ${each.name}`)) ??
      partValue(this.part, "yield", "stress", "yield strength", this.label)
    );
  }

  /** Bending moment it may carry: as its maker states it, else yield × plastic modulus ÷ factor. */
  get allowable(): Value<"moment"> {
    const stated = this.#own("allowable-moment");
    if (stated) return stated as Known<"moment">;
    const [Fy, E] = [this.yield, this.elasticity];
    const refused = Fy.known && E.known ? this.#refusal(Fy.value, E.value) : undefined;
    if (refused !== undefined)
      return missing("moment", {
        path: "allowable-moment",
        what: "allowable bending moment",
        because: `${this.label}: ${refused}; its maker has to state the allowable bending moment.`,
      });
    const source = this.#published?.allowableSource ?? "aisc-360-f8";
    const Ω = tabled(this.#published?.factor ?? 1.67, "factor", source, "safety factor");
    return restingOn(allowableMoment.of({ Fy, Z: this.#plastic, Ω }), source);
  }

  /** What the allowable moment rests on. */
  get allowableSource(): SourceId {
    return this.#own("allowable-moment") ? "part" : (this.#published?.allowableSource ?? "aisc-360-f8");
  }

  get #plastic(): Value {
    return (
      this.#of((each) => tabled(each.plastic, "section-modulus", each.source, `plastic modulus of ${each.name}`)) ??
      tubePlasticModulus.of({
        D: partValue(this.part, "outside", "length", "outside diameter", this.label),
        t: partValue(this.part, "wall", "length", "wall", this.label),
      })
    );
  }

  /** Why the full plastic moment is not to be used. */
  #refusal(yieldStress: number, modulus: number): string | undefined {
    if (!this.#published && modulus < STEEL) return "it is not steel";
    const [outside, wall] = [
      this.#published?.outside ?? this.#own("outside")?.value,
      this.#published?.wall ?? this.#own("wall")?.value,
    ];
    return outside !== undefined && wall !== undefined && !isCompact(outside, wall, modulus, yieldStress)
      ? "its wall is too thin for its diameter"
      : undefined;
  }

  #ofTube(): Value {
    const [outside, wall] = [this.#own("outside"), this.#own("wall")];
    if (!outside || !wall || wall.value * 2 >= outside.value)
      return partValue(this.part, "second-moment", "second-moment", "second moment of area", this.label);
    return tabled(
      tubeProperties(outside.value, wall.value).secondMoment,
      "second-moment",
      "tube-formula",
      "second moment of the tube",
    );
  }

  #own(path: string): Known | undefined {
    return this.part?.quantities.get(path);
  }

  #of(value: (section: PipeSection) => Known): Known | undefined {
    return this.#published && value(this.#published);
  }
}
