/** One cell of a table of figures as words. */
type Words = string;

export interface TableFigures {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Words[])[];
}

/** As many digits as were transcribed; what was only converted into SI shows no more than that. */
const number = (value: number): string => String(Number(value.toPrecision(9)));

const isGroup = (data: unknown): data is Readonly<Record<string, unknown>> =>
  typeof data === "object" && data !== null && !Array.isArray(data);

const entriesOf = (data: unknown): readonly (readonly [string, unknown])[] =>
  data instanceof Map ? [...data].map(([key, each]) => [String(key), each] as const) : Object.entries(data as object);

function words(data: unknown): Words {
  if (data === undefined || data === null) return "–";
  if (typeof data === "number") return number(data);
  if (typeof data === "boolean") return data ? "yes" : "no";
  if (Array.isArray(data)) return data.map(words).join(", ");
  return isGroup(data)
    ? entriesOf(data)
        .map(([key, each]) => `${spelt(key)} ${words(each)}`)
        .join("; ")
    : String(data);
}

/** `mostBreaker` → `most breaker`; `at60` and `c14` stand as they are. */
const spelt = (name: string): string =>
  name.replace(/([a-z])([A-Z])/gu, (_, one, other) => `${one} ${other.toLowerCase()}`);

/** The fields of a row side by side; a group within it gives each of its fields a column. */
function flat(row: Readonly<Record<string, unknown>>, before = ""): readonly (readonly [string, unknown])[] {
  return entriesOf(row).flatMap(([name, each]): readonly (readonly [string, unknown])[] => {
    const own = `${before}${spelt(name)}`;
    if (typeof each === "function") return [];
    return isGroup(each) ? flat(each, `${own} `) : [[own, each]];
  });
}

/** Rows with a field for each column; one that a row has not is said to be missing by a dash. */
function byField(rows: readonly (readonly (readonly [string, unknown])[])[]): TableFigures {
  const columns = [...new Set(rows.flatMap((row) => row.map(([name]) => name)))];
  const maps = rows.map((row) => new Map(row));
  return { columns, rows: maps.map((row) => columns.map((name) => words(row.get(name)))) };
}

/** Names for the columns of rows without field names, from what the table says it holds: `NPS, outside in, wall in`. */
function titles(count: number, holds: string): readonly string[] {
  const said = holds.split(/[,;] /u);
  return said.length === count ? said : Array.from({ length: count }, (_, index) => String(index + 1));
}

/** The rows of any table of the register, whatever form its figures are kept in. */
export function tableFigures(data: unknown, holds: string): TableFigures {
  if (Array.isArray(data)) {
    if (data.every(isGroup)) return byField(data.map((row) => flat(row)));
    if (data.every(Array.isArray)) {
      const wide = Math.max(0, ...data.map((row: readonly unknown[]) => row.length));
      return { columns: titles(wide, holds), rows: data.map((row: readonly unknown[]) => row.map(words)) };
    }
    return { columns: ["figure"], rows: data.map((each) => [words(each)]) };
  }
  if (isGroup(data)) {
    const all = entriesOf(data).filter(([, each]) => typeof each !== "function");
    if (all.every(([, each]) => isGroup(each)))
      return byField(
        all.map(([name, each]) => {
          const row = flat(each as Readonly<Record<string, unknown>>);
          return row.some(([field, value]) => field === "id" && value === name)
            ? row
            : [["for", name] as const, ...row];
        }),
      );
    return { columns: ["for", "figure"], rows: all.map(([name, each]) => [spelt(name), words(each)]) };
  }
  return { columns: ["figure"], rows: [[words(data)]] };
}
