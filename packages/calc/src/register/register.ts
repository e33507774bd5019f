import { connectors } from "../connectors/index.js";
import { type Formula, formulas } from "../formula/formula.js";
import { sections } from "../rigging/section/table.js";
import { type SourceId, sources } from "../sources/index.js";
import type { Source } from "../sources/source.js";
import type { Method } from "./method.js";
import { methods } from "./methods/index.js";
import { type RegisterTable, sourcesOfTable } from "./table.js";
import { tables } from "./tables/index.js";

/** What a rule says of itself that the register needs. */
export interface Citing {
  readonly id: string;
  readonly states: string;
  readonly sources: readonly SourceId[];
}

/** One source and everything that rests on it, by id. */
export interface RegisterEntry {
  readonly id: SourceId;
  readonly source: Source;
  readonly formulas: readonly string[];
  readonly methods: readonly string[];
  readonly tables: readonly string[];
  readonly connectors: readonly string[];
  readonly sections: readonly string[];
  readonly rules: readonly string[];
}

export interface Register {
  readonly sources: readonly RegisterEntry[];
  readonly formulas: readonly Formula[];
  readonly methods: readonly Method[];
  readonly tables: readonly RegisterTable[];
}

const sourcesOfFormula = (each: Formula): readonly SourceId[] => [each.source, ...(each.also ?? [])];

function entry(id: SourceId, rules: readonly Citing[]): RegisterEntry {
  const cites = (list: readonly (SourceId | undefined)[]): boolean => list.includes(id);
  return {
    id,
    source: sources[id],
    formulas: formulas()
      .filter((each) => cites(sourcesOfFormula(each)))
      .map((each) => each.id),
    methods: methods.filter((each) => cites(each.sources)).map((each) => each.name),
    tables: tables.filter((each) => cites(sourcesOfTable(each))).map((each) => each.id),
    connectors: [...connectors.values()]
      .filter((each) => cites([each.source, each.retentionSource]))
      .map((each) => each.id),
    sections: [...sections.values()]
      .filter((each) => cites([each.source, each.allowableSource]))
      .map((each) => each.id),
    rules: rules.filter((each) => cites(each.sources)).map((each) => each.id),
  };
}

/** Everything that rests on a source, counted. */
export const restsOn = ({ formulas, methods, tables, connectors, sections, rules }: RegisterEntry): number =>
  [formulas, methods, tables, connectors, sections, rules].reduce((count, each) => count + each.length, 0);

/**
 * The register of sources and formulas, put together from the code itself. The rules are handed in, since they are
 * made after this package.
 */
export const register = (rules: readonly Citing[]): Register => ({
  sources: (Object.keys(sources) as SourceId[]).map((id) => entry(id, rules)),
  formulas: formulas(),
  methods,
  tables,
});
