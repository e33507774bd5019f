import { guessMark, printer, type System, type Value } from "@plumbmark/calc";
import type { Build, CheckEntry, Data, InspectedDocument, OpenRepository } from "@plumbmark/core";
import type { Mapping } from "../data.js";

/** A front matter that is being weighed: its computed values, and what rules say of it. */
export interface Weighed {
  readonly build: Build;
  /** A computed value by its path; undefined where there is no such value. */
  value(path: string): Value | undefined;
  /** The same as a number in the SI unit of its kind; undefined where it is not known. */
  known(path: string): number | undefined;
  /** The same as it is printed, with the mark of a guess; undefined where it cannot be told. */
  text(path: string): string | undefined;
  /** The system of units it is written in. */
  readonly system: System;
  /** What does not hold by the rules whose ids begin with one of these. */
  checks(...rules: readonly string[]): readonly CheckEntry[];
  /** Requirements that fail by the rules whose ids begin with one of these. */
  fails(...rules: readonly string[]): readonly CheckEntry[];
}

/** The search was to end by now. */
export class OutOfTime extends Error {}

const SEED = (name: string): string => `---\nbuild: ${name}\ntitle: ${name}\nstatus: draft\n---\n`;

/**
 * Where drafts are weighed: a repository with a document in memory, whose front matter is laid over and asked about.
 * Every figure comes from the model and every judgement from the rules.
 */
export class Desk {
  #asked = 0;
  #rulesRun = 0;
  #inspected = 0;

  /**
   * @param repository one of its own: a document is put into it
   * @param path where the drafted document is going to be
   * @param isOver whether the search was to end by now
   * @param given what every front matter has that decides how the rest is judged: the practice, where it stands
   */
  constructor(
    readonly repository: OpenRepository,
    readonly path: string,
    private readonly isOver: () => boolean = () => false,
    private readonly given: Mapping = {},
  ) {
    repository.replace(path, SEED("draft"), "document");
  }

  /** How much was asked: front matters laid over, rules put to them, whole inspections. */
  get counts(): { readonly asked: number; readonly rules: number; readonly inspections: number } {
    return { asked: this.#asked, rules: this.#rulesRun, inspections: this.#inspected };
  }

  /** Whether the search was to end by now. */
  get over(): boolean {
    return this.isOver();
  }

  /** Weighs a front matter. @throws OutOfTime */
  ask(matter: Mapping): Weighed {
    if (this.isOver()) throw new OutOfTime("the time for the search is over");
    this.#asked += 1;
    const laid = this.repository.with([
      {
        op: "replace",
        document: this.path,
        path: "",
        value: { build: "draft", title: "draft", status: "draft", ...this.given, ...matter } as Data,
      },
    ]);
    const { build, system } = laid.model(this.path);
    const print = printer(system);
    const value = (path: string): Value | undefined => build.valueAt(path);
    const checks = (...ids: readonly string[]): readonly CheckEntry[] =>
      this.repository.rules
        .filter(({ id }) => ids.some((each) => id.startsWith(each)))
        .flatMap((rule) => {
          this.#rulesRun += 1;
          return laid.run(rule, this.path).filter(({ outcome }) => outcome !== "holds");
        });
    return {
      build,
      value,
      known: (path) => {
        const found = value(path);
        return found?.known ? found.value : undefined;
      },
      text: (path) => {
        const found = value(path);
        return found?.known ? `${print(found.value, found.kind, found.unit)}${guessMark(found)}` : undefined;
      },
      system,
      checks,
      fails: (...ids) => checks(...ids).filter(({ outcome, level }) => outcome === "fails" && level === "shall"),
    };
  }

  /** Inspects a document as it is written. */
  inspect(text: string): InspectedDocument {
    this.#inspected += 1;
    this.repository.replace(this.path, text, "document");
    return this.repository.one(this.path);
  }
}
