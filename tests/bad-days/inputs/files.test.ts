import type { InspectionRecord } from "@plumbmark/core";
import { describe, expect, test } from "vitest";
import { plumbmark } from "../../plumbmark.js";
import { DATA, ENCODINGS, INHERITED } from "./faults.js";
import { SMALL, small } from "./small.js";

// Every kind of file a person writes, with everything that can be the matter with a file: it is told with its name and
// its place, with a sentence on what is allowed, and the exit status is 1 where a document is not ready because of it
// and 2 where nothing can be inspected.

const REPOSITORY = {
  ...SMALL,
  "builds/house-standard.yaml": "house-standard: Folder\n",
  "other.yaml": "house-standard: Other\nsections: []\n",
} as const;

interface Kind {
  readonly name: string;
  readonly path: string;
  readonly words: readonly string[];
  /** Exit status with a fault in it. */
  readonly status: 1 | 2;
  readonly whole: RegExp;
}

const INSPECT = ["inspect", "--as", "json", "--no-cache"];
const STANDARD = { status: 2, whole: /The house standard is .*under `house-standard:` stands its name/su } as const;
const KINDS: readonly Kind[] = [
  {
    name: "catalogue",
    path: "parts/p.yaml",
    words: INSPECT,
    status: 1,
    whole: /The parts catalogue is .*kind: panel/su,
  },
  { name: "stock", path: "stock.yaml", words: INSPECT, status: 1, whole: /The stock list is .*`lots:`/su },
  { name: "house standard", path: "house-standard.yaml", words: INSPECT, ...STANDARD },
  { name: "folder standard", path: "builds/house-standard.yaml", words: INSPECT, ...STANDARD },
  { name: "--standard", path: "other.yaml", words: [...INSPECT, "--standard", "other.yaml"], ...STANDARD },
  { name: "--against", path: "other.yaml", words: [...INSPECT, "--against", "other.yaml"], ...STANDARD },
];

interface Came {
  readonly status: number;
  /** Everything that was told of the file. */
  readonly told: string;
  /** Places in the file that were told, lines and columns. */
  readonly places: readonly (readonly [line: number, column: number])[];
}

async function came({ path, words }: Pick<Kind, "path" | "words">, content: Uint8Array | string): Promise<Came> {
  const { status, out, err } = await plumbmark(small({ ...REPOSITORY, [path]: content }), words);
  expect(err).not.toMatch(/mistake in Plumbmark|call stack|parseAll/u);
  const documents = out === "" ? [] : (JSON.parse(out) as InspectionRecord).documents;
  const checks = documents
    .filter(({ file }) => file === path)
    .flatMap((each) => each.checks)
    .filter(({ rule, outcome }) => /^document\.(?:front-matter|parts)$/u.test(rule) && outcome === "fails");
  const written = [...err.matchAll(/(?:line |:)(\d+)(?:, column |:)(\d+)/gu)].map(([, ...place]) => place.map(Number));
  return {
    status,
    told: `${err}${checks.map(({ says, mend }) => `${says} ${mend}`).join("\n")}`,
    places: [...checks.map(({ at }) => [at.line, at.column]), ...written] as [number, number][],
  };
}

/** Every place lies inside the file: RFC 5147, and CommonMark 2.1 for what ends a line. */
function inside(places: Came["places"], text: string): void {
  const lines = text.split(/\r\n|\n|\r/u);
  for (const [line, column] of places) {
    expect(line).toBeLessThanOrEqual(lines.length);
    expect(column).toBeLessThanOrEqual((lines[line - 1] as string).length + 1);
  }
}

describe.each(KINDS)("$name", (kind) => {
  const good = REPOSITORY[kind.path as keyof typeof REPOSITORY];

  test.each(ENCODINGS)("$name", async ({ of, fine, at }) => {
    const { status, told, places } = await came(kind, of(good));
    expect(status, told).toBe(fine ? 0 : kind.status);
    if (fine) expect(told).toBe("");
    else expect(told).toMatch(/UTF-16.*Save it as UTF-8|not text|UTF-8.*Save it|is empty/su);
    if (kind.status === 2 && !fine) expect(told).toContain(kind.path);
    if (at) expect(places).toContainEqual(at(good));
  });

  test.each(DATA)("$name", async ({ yaml, says, at }) => {
    const { status, told, places } = await came(kind, yaml);
    expect(status, told).toBe(kind.status);
    expect(told).toMatch(says ?? kind.whole);
    expect(places.length).toBeGreaterThan(0);
    if (at) expect(places).toContainEqual(at);
    inside(places, yaml);
  });

  test.each(INHERITED.flatMap((key) => [`${key}: {a: 1}\n`, `tile: {${key}: {a: 1}}\n`, `{"${key}": [1]}\n`]))(
    "%j gives no object anything",
    async (yaml) => {
      const { status, told, places } = await came(kind, yaml);
      expect(status, told).toBe(kind.status);
      inside(places, yaml);
      expect(places.length).toBeGreaterThan(0);
      expect(Object.keys(Object.prototype)).toEqual([]);
      expect(({} as { a?: unknown }).a).toBeUndefined();
    },
  );
});
