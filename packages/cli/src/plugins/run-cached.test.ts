import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { openStandards, type RepositoryFiles, type Rule } from "@plumbmark/core";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { ResultCache } from "../engine/cache/cache.js";
import { pluginCode } from "./code.js";
import { rulesOfPlugins } from "./plugins.js";

// What a plugin came to is used again while its code and everything it can see are the same, and never in doubt.

let folder: string;
const used: string[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-code-"));
  used.push(folder);
});
afterAll(() => {
  for (const each of used) rmSync(each, { recursive: true, force: true });
});

const put = (path: string, text: string): void => {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
};

const code = (path = "rules/entry.mjs") =>
  pluginCode({ name: path, address: pathToFileURL(join(folder, path)).href }, folder);

describe("the code of a plugin", () => {
  beforeEach(() => {
    put(
      "rules/entry.mjs",
      'import { plugin } from "@plumbmark/kit";\nimport { a } from "../shared/a.mjs";\nvoid [plugin, a];\n',
    );
    put(
      "shared/a.mjs",
      'import b from "./b.json" with { type: "json" };\nexport const a = [b, await import("./c.mjs")];\n',
    );
    put("shared/b.json", "1");
    put("shared/c.mjs", 'export * from "../rules/entry.mjs";\n');
  });

  test("is every file it imports, in a circle too", async () => {
    const files = ((await code()) ?? []).map(([path]) => path).sort();
    expect(files).toEqual(["rules/entry.mjs", "shared/a.mjs", "shared/b.json", "shared/c.mjs"]);
  });

  test.each(["rules/entry.mjs", "shared/a.mjs", "shared/b.json", "shared/c.mjs"])(
    "is another when %s is",
    async (path) => {
      const before = await code();
      put(path, `${readFileSync(join(folder, path), "utf8")}\n`);
      expect(await code()).toBeDefined();
      expect(await code()).not.toEqual(before);
    },
  );

  test.each([
    ["a name that is told only as it runs", 'export const a = await import("./" + "c.mjs");'],
    ["what is of the system", 'import "node:fs";'],
    ["another package", 'import "left";'],
    ["a path that is not its own", 'import "/a.mjs";'],
    ["its own address", "export const a = import.meta.url;"],
    ["a file that is not there", 'import "./d.mjs";'],
    ["what may be a script of the older kind", 'import "./e.js";'],
    ["no module", "const a = 1;"],
    ["what cannot be read", 'import { from "'],
  ])("is in doubt when it imports or is %s", async (_, text) => {
    put("shared/e.js", "export const e = 1;\n");
    put("shared/a.mjs", `${text}\n`);
    expect(await code()).toBeUndefined();
  });

  test("is in doubt when a file lies outside, or a kit of its own beside it", async () => {
    const outside = mkdtempSync(join(tmpdir(), "plumbmark-code-"));
    used.push(outside);
    writeFileSync(join(outside, "c.mjs"), "export const c = 1;\n");
    rmSync(join(folder, "shared/c.mjs"));
    symlinkSync(join(outside, "c.mjs"), join(folder, "shared/c.mjs"));
    expect(await code()).toBeUndefined();
    put("shared/c.mjs.txt", "");
    rmSync(join(folder, "shared/c.mjs"));
    put("shared/c.mjs", "export const c = 1;\n");
    expect(await code()).toBeDefined();
    put("rules/node_modules/@plumbmark/kit/index.js", "");
    expect(await code()).toBeUndefined();
  });

  test("of a package is in doubt", async () => {
    expect(await pluginCode({ name: "house", address: "house" }, folder)).toBeUndefined();
  });
});

const document = (name: string) => ({
  path: `builds/${name}.md`,
  text: `---\nbuild: ${name}\ntitle: ${name}\nstatus: draft\nfaces: {}\n---\n\n# ${name}\n`,
});

/** It leaves a mark each time it is loaded; an honest rule does nothing of the kind. */
const marking = (more = "") => `import { is, plugin, rule } from "@plumbmark/kit";
process.getBuiltinModule("node:fs").appendFileSync(${JSON.stringify(join(folder, "mark"))}, "x");
${more}
export default plugin({ kit: 1, rules: [rule({ id: "house.own", states: "S.", level: "should", why: "w", judged: "j", sources: ["house"],
  *checks({ build }) { yield is(build, { holds: false, says: "It was looked at.", mend: "Nothing." }); } })] });
`;

/** The same, and a mark with its name for each document it looks at. */
const marked = (looks: string): string =>
  marking().replace(
    "*checks({ build }) {",
    `*checks({ build, repository }) {
    process.getBuiltinModule("node:fs").appendFileSync(${JSON.stringify(join(folder, "looked"))}, build.context.file + " ");
    ${looks}`,
  );

const lookedAt = (): string => {
  const found = readFileSync(join(folder, "looked"), "utf8").trim();
  rmSync(join(folder, "looked"));
  return found;
};

interface Asked {
  readonly today?: string;
  /** The document whose heading is another one. */
  readonly changed?: string;
  /** Documents that are asked for, when not all are. */
  readonly only?: readonly string[];
}

async function run(
  names: readonly string[],
  { today = "2027-01-01", changed, only = names }: Asked = {},
): Promise<readonly Rule[]> {
  const files: RepositoryFiles = {
    houseStandard: { path: "house-standard.yaml", text: 'house-standard: House\nrules-from: ["./own.mjs"]\n' },
    parts: [],
    documents: names.map(document).map((each) => ({ ...each, text: each.text.replace(`# ${changed}`, "# Changed") })),
  };
  const cache = new ResultCache(join(folder, "kept"), "an edition");
  const wanted = only.map((name) => document(name).path);
  const found = await rulesOfPlugins({
    settings: openStandards(files).root.settings,
    standard: files.houseStandard,
    folder,
    taken: [],
    warn: () => undefined,
    cache,
    on: { files, today, wanted },
  });
  cache.save();
  return found;
}

const loaded = (): number => readFileSync(join(folder, "mark"), "utf8").length;

describe("a plugin", { timeout: 120_000 }, () => {
  test("is asked once while nothing is changed, and again when anything is", async () => {
    put("own.mjs", marking());
    const first = await run(["one"]);
    const again = await run(["one"]);
    expect(loaded()).toBe(1);
    expect(again.map(({ result }) => result?.("builds/one.md"))).toEqual(
      first.map(({ result }) => result?.("builds/one.md")),
    );
    await run(["one", "two"]);
    expect(loaded()).toBe(2);
    await run(["one", "two"], { today: "2027-01-02" });
    expect(loaded()).toBe(3);
    put("own.mjs", marking("// changed"));
    await run(["one", "two"], { today: "2027-01-02" });
    expect(loaded()).toBe(4);
  });

  test("that failed is asked again, and so is one that prints", async () => {
    for (const more of ['throw new Error("no");', 'console.log("hello");']) {
      rmSync(join(folder, "mark"), { force: true });
      put("own.mjs", marking(more));
      await run(["one"]);
      await run(["one"]);
      expect(loaded()).toBe(2);
    }
  });

  test("that looks at one document at a time is asked about those that were changed", async () => {
    put("own.mjs", marked(""));
    const names = ["one", "two", "three"];
    await run(names);
    expect(lookedAt()).toBe("builds/one.md builds/two.md builds/three.md");
    const [rule] = await run(names, { changed: "two" });
    expect(lookedAt()).toBe("builds/two.md");
    expect(names.map((name) => rule?.result?.(document(name).path).length)).toEqual([1, 1, 1]);
    // Another name is something the others can see.
    await run([...names, "four"]);
    expect(lookedAt().split(" ")).toHaveLength(4);
  });

  test("that looks around is given every document, whoever was asked for, and asked anew when any is changed", async () => {
    const titles = 'const seen = repository.builds.map(({ sections }) => sections[0].title).join(" ");';
    put("own.mjs", marked(titles).replace('says: "It was looked at."', "says: `It saw ${seen}.`"));
    const names = ["one", "two"];
    const says = (rules: readonly Rule[]) => rules[0]?.result?.("builds/one.md").map((each) => each.says);
    expect(says(await run(names, { only: ["one"] }))).toEqual(["It saw one two."]);
    expect(says(await run(names, { only: ["one"], changed: "two" }))).toEqual(["It saw one Changed."]);
  });
});
