import { caughtLoad, caughtTaut, counted, difference, missing, sum, times, type Value } from "@plumbmark/calc";
import { Assembly } from "./assembly.js";
import type { Bar } from "./bar.js";
import type { Hang } from "./hang.js";

/** The second, independent suspension of a bar. */
export class SecondSuspension {
  readonly path: string;
  readonly label: string;
  readonly assembly: Assembly;

  constructor(readonly bar: Bar) {
    this.path = `${bar.path}.second`;
    this.label = `The second suspension of bar ${bar.name}`;
    this.assembly = new Assembly(bar.build.reader, `${this.path}.assembly`, this.label, bar.build.practice);
  }

  /** Hangs it is at; undefined when it is not written down. */
  get hangs(): readonly Hang[] | undefined {
    const at = this.bar.build.reader.data(`${this.path}.at`);
    if (at === "each hang") return this.bar.hangs;
    return Array.isArray(at) ? this.bar.hangs.filter(({ name }) => at.includes(name)) : undefined;
  }

  /** Whether it catches the bar where a hang is lost. */
  isAt(hang: Hang): boolean {
    return this.hangs?.some(({ name }) => name === hang.name) ?? false;
  }

  /** The rope, chain or sling in it that catches the load; undefined when there is none. */
  get rope(): Assembly["parts"][number] | undefined {
    return this.assembly.parts.find(({ part }) => part?.kind === "rope" || part?.data.sling !== undefined);
  }

  get girth(): Value<"length"> {
    return this.bar.build.reader.value(`${this.path}.girth`, "length", "way round the structure", this.label);
  }

  /** How far the load falls before it is caught; nothing where it is written that there is none. */
  get slack(): Value<"length"> {
    return this.bar.build.reader.data(`${this.path}.slack`) === "none"
      ? counted(0, "no slack, as written", "length")
      : this.bar.build.reader.value(`${this.path}.slack`, "length", "slack", this.label);
  }

  /** What it carries when it catches what a hang held: twice that without slack, more with it. */
  caught(load: Value<"mass">): Value<"mass"> {
    const { slack, rope } = this;
    if (!slack.known) return missing("mass", ...slack.gaps);
    if (slack.value === 0) return caughtTaut.of({ W: load });
    if (!rope) return missing("mass", { path: `${this.path}.assembly`, what: "rope, chain or sling", of: this.label });
    return caughtLoad.of({
      W: load,
      EA: this.assembly.valueOf(rope, "stiffness", "force", "stiffness"),
      L: this.assembly.valueOf(rope, rope.part?.kind === "rope" ? "length" : "effective", "length", "length"),
      s: slack,
    });
  }

  /** Shortest and longest it can be made. */
  get length(): readonly [Value<"length">, Value<"length">] {
    return this.assembly.length;
  }

  /** The width of what it goes round, from the survey or the bar; undefined where neither is written. */
  get #across(): Value<"length"> | undefined {
    const { reader, path, label } = { reader: this.bar.build.reader, path: this.bar.path, label: this.bar.label };
    return (
      reader.optional(`${path}.flange`, "length", "width of the beam's flange above it", label) ??
      reader.optional(`${path}.pipe`, "length", "diameter of the pipe above it", label)
    );
  }

  /** The shortest way there is round what it goes round: twice the width of it. */
  get leastGirth(): Value<"length"> | undefined {
    const across = this.#across;
    return across && times(across, 2, "2");
  }

  /** The way it has to reach: round the structure and down to the bar; as a basket, up again on the other side. */
  get way(): Value<"length"> {
    const once = sum([this.girth, this.bar.drop], "length", "way");
    if (this.rope?.mode !== "basket") return once;
    const across = this.#across;
    const both = sum([once, this.bar.drop], "length", "way");
    return across ? difference(both, across, "length", "way") : both;
  }

  /** What all of them weigh. */
  get mass(): Value<"mass"> {
    const { hangs } = this;
    if (!hangs) return missing("mass", { path: `${this.path}.at`, what: "hangs it is at", of: this.label });
    return times(this.assembly.mass, hangs.length, `${hangs.length}`);
  }
}
