import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Ajv } from "ajv";
import remarkGfm from "remark-gfm";
import remarkParse from "remark-parse";
import { unified } from "unified";
import { expect, test } from "vitest";
import { committed, unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";

/** The OASIS schema, draft-04 as published, in words the validator knows. */
function sarifSchema(): object {
  const path = createRequire(import.meta.url).resolve("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json");
  const { id, ...rest } = JSON.parse(readFileSync(path, "utf8")) as Record<string, unknown>;
  return { ...rest, $schema: "http://json-schema.org/draft-07/schema#", $id: id };
}
const validate = new Ajv({ strict: false, unicodeRegExp: false, validateFormats: false }).compile(sarifSchema());

interface Result {
  readonly ruleId: string;
  readonly kind: string;
  readonly level: string;
  readonly locations: readonly {
    readonly physicalLocation: {
      readonly artifactLocation: { readonly uri: string };
      readonly region: { readonly startLine: number };
    };
  }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly suppressions?: readonly { readonly kind: string; readonly justification: string }[];
  readonly fixes?: readonly {
    readonly artifactChanges: readonly {
      readonly artifactLocation: { readonly uri: string };
      readonly replacements: readonly {
        readonly deletedRegion: object;
        readonly insertedContent: { readonly text: string };
      }[];
    }[];
  }[];
}

async function results(repository: ReturnType<typeof committed>, ...words: string[]): Promise<readonly Result[]> {
  const { out, err } = await repository.plumbmark("inspect", "--as", "sarif", ...words);
  const log = JSON.parse(out) as { runs: readonly { results: readonly Result[] }[] };
  expect({ valid: validate(log), errors: validate.errors ?? [], err }).toEqual({ valid: true, errors: [], err: "" });
  return log.runs[0]?.results ?? [];
}

test("SARIF: valid against the schema of SARIF 2.1.0 (OASIS), with and without the checks that hold", async () => {
  const repository = unborn();
  const some = await results(repository);
  const every = await results(repository, "--every");
  expect(some.some(({ kind, level }) => kind === "fail" && level === "error")).toBe(true);
  expect(some.some(({ kind, level }) => kind === "open" && level === "none")).toBe(true);
  expect(some.every(({ kind }) => kind !== "pass")).toBe(true);
  expect(every.filter(({ kind }) => kind === "pass").length).toBeGreaterThan(100);
});

test("SARIF: every document has its verdict, also one that only waits for what is not written (SARIF 2.1.0, 3.24)", async () => {
  const repository = unborn();
  repository.change(BANNER, "      other-load: none\n", "");
  const { out } = await repository.plumbmark("inspect", "--as", "sarif");
  const { runs } = JSON.parse(out) as {
    readonly runs: readonly {
      readonly artifacts: readonly { readonly location: { readonly uri: string }; readonly properties: object }[];
    }[];
  };
  const verdicts = new Map(runs[0]?.artifacts.map(({ location, properties }) => [location.uri, properties]));
  expect(verdicts.size).toBeGreaterThan(3);
  expect(verdicts.get(BANNER)).toEqual({ verdict: "not ready" });
  expect(verdicts.get("builds/riser-fascias.md")).toEqual({ verdict: "ready" });
  expect(verdicts.get("builds/gallery-header.md")).toEqual({ verdict: "draft" });
});

test("SARIF: a waived check is suppressed in the source, with its reason (SARIF 2.1.0, 3.35)", async () => {
  const repository = unborn();
  repository.change(
    "builds/gala-wall.md",
    "\nfaces:",
    "\nwaivers:\n  - {rule: data.port-load, accepts: 530000 px, because: a bench test, by: M. Finch, until: 2027-12-31}\n\nfaces:",
  );
  const waived = (await results(repository, "builds/gala-wall.md")).find(({ ruleId }) => ruleId === "data.port-load");
  expect(waived).toMatchObject({ kind: "fail", level: "error", suppressions: [{ kind: "inSource" }] });
  expect(waived?.suppressions?.[0]?.justification).toContain("a bench test");
});

test("SARIF: a fingerprint stays when lines move, and differs from every other", async () => {
  const repository = unborn();
  const print = ({ partialFingerprints }: Result): string => Object.values(partialFingerprints)[0] ?? "";
  // What is changed is approved no longer, which is told besides.
  const told = async () => (await results(repository)).filter(({ ruleId }) => ruleId !== "document.sign-off");
  const before = await told();
  for (const file of ["builds/gala-wall.md", "builds/gallery-header.md"])
    repository.change(file, "\nfaces:", "\n# moved\n# down\n\nfaces:");
  const after = await told();
  expect(after.map(print)).toEqual(before.map(print));
  expect(new Set(before.map(print)).size).toBe(before.length);
  const line = ({ locations }: Result): number => locations[0]?.physicalLocation.region.startLine ?? 0;
  expect(after.map(line)).not.toEqual(before.map(line));
});

test("SARIF: a place is told from the top of the git repository, as a valid URI", async () => {
  const repository = committed();
  repository.write("builds/two words.md", "---\nbuild: two\n---\n");
  const [first] = await results(repository, "builds/two words.md");
  expect(first?.locations[0]?.physicalLocation.artifactLocation.uri).toBe("builds/two%20words.md");
});

test("GNU: every line is `file:line:column: message` (GNU Coding Standards, Formatting Error Messages)", async () => {
  const { out } = await unborn().plumbmark("inspect", "--as", "gnu");
  const lines = out.trimEnd().split("\n");
  expect(lines.length).toBeGreaterThan(4);
  for (const line of lines) expect(line).toMatch(/^builds\/[a-z-]+\.md:[1-9]\d*:[1-9]\d*: \S/u);
});

test("Markdown: what an author wrote is text in it, no link, no HTML, no call of a name", async () => {
  const repository = committed();
  repository.change(
    BANNER,
    "title: Over-stage text banner",
    'title: "<b>x</b> [y](http://z.example) | @somebody **bold** https://w.example"',
  );
  repository.write("builds/a|b.md", "---\nbuild: [x](y)\n---\n");
  const { out } = await repository.plumbmark("inspect", "--as", "markdown");
  const kinds = new Set<string>();
  const walk = (node: { type: string; children?: readonly { type: string }[] }): void => {
    kinds.add(node.type);
    for (const child of node.children ?? []) walk(child);
  };
  walk(unified().use(remarkParse).use(remarkGfm).parse(out) as never);
  expect(["html", "link", "image", "linkReference", "footnoteReference"].filter((kind) => kinds.has(kind))).toEqual([]);
  expect(kinds.has("table")).toBe(true);
  expect(out).not.toMatch(/(^|\s)@somebody/u);
});

test("SARIF: what would put a result right is a fix: the sure changes together, each of the others alone (3.55)", async () => {
  const repository = unborn();
  repository.change("builds/over-stage-banner.md", "    trim: 11 ft", "    trimm: 11 ft");
  repository.change("builds/over-stage-banner.md", "structure: 1000 lb", "structure: 1,000 lb");
  const found = (await results(repository, "builds/over-stage-banner.md")).filter(
    ({ ruleId }) => ruleId === "document.front-matter",
  );
  const changes = found.map(({ fixes = [] }) =>
    fixes.map(({ artifactChanges: [change] }) => [
      change?.artifactLocation.uri,
      ...(change?.replacements ?? []).map(({ deletedRegion, insertedContent }) => [
        deletedRegion,
        insertedContent.text,
      ]),
    ]),
  );
  const at = (startLine: number, startColumn: number, endColumn: number) => ({
    startLine,
    startColumn,
    endLine: startLine,
    endColumn,
  });
  const line = (words: string): number =>
    repository
      .read("builds/over-stage-banner.md")
      .split("\n")
      .findIndex((each) => each.includes(words)) + 1;
  const uri = "builds/over-stage-banner.md";
  expect(changes).toEqual([
    [[uri, [at(line("trimm:"), 5, 10), "trim"]]],
    [
      [uri, [at(line("1,000 lb"), 18, 26), "1000 lb"]],
      [uri, [at(line("1,000 lb"), 18, 26), "1.000 lb"]],
    ],
  ]);
});
