import { mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { plumbmark } from "../../../../tests/plumbmark.js";
import { copyStarter } from "../../../../tests/starter.js";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "plumbmark-"));
  copyStarter(join(folder, "docs"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

// One white pixel, after the PNG specification (ISO/IEC 15948): signature, IHDR, IDAT, IEND.
const PNG = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsVF8nwAAAABJRU5ErkJggg==",
  "base64",
);

interface Ran {
  readonly status: Promise<number>;
  readonly end: () => void;
  readonly out: () => string;
  readonly progress: readonly string[];
}

function run(...words: readonly string[]): Ran {
  let out = "";
  let end: () => void = () => undefined;
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  const progress: string[] = [];
  const take = (text: string): void => {
    out += text;
  };
  const told = plumbmark(folder, words, {
    print: take,
    warn: take,
    progress: (text) => void progress.push(text),
    ended: () => ended,
  });
  return { status: told.then(({ status }) => status), end, out: () => out, progress };
}

const until = async (holds: () => boolean): Promise<void> => {
  while (!holds()) await new Promise((resolve) => setTimeout(resolve, 20));
};

const BANNER = "docs/builds/over-stage-banner.md";
/** For tests that look at one sheet: the others take their time, and show nothing of what is tested. */
async function onlyBanner(): Promise<void> {
  const names = await readdir(join(folder, "docs/builds"));
  expect(names).toContain("over-stage-banner.md");
  for (const name of names) if (!BANNER.endsWith(`/${name}`)) await rm(join(folder, "docs/builds", name));
}
const add = async (path: string, text: string): Promise<void> =>
  writeFile(join(folder, path), `${await readFile(join(folder, path), "utf8")}\n${text}\n`);

test("how far it is, is shown, and taken away at the end", async () => {
  await onlyBanner();
  const { status, progress } = run("publish", "docs", "--to", "site");
  expect(await status).toBe(0);
  expect(progress[0]).toMatch(/^Inspecting 1 file/u);
  expect(progress.length).toBeGreaterThan(10);
  expect(progress.at(-1)).toBe("");
});

test("pictures of the repository come along, and nothing from outside it does", async () => {
  await onlyBanner();
  await mkdir(join(folder, "docs/pictures"));
  await writeFile(join(folder, "docs/pictures/plan.png"), PNG);
  await writeFile(join(folder, "secret.png"), PNG);
  await symlink(join(folder, "secret.png"), join(folder, "docs/pictures/link.png"));
  await writeFile(join(folder, "docs/pictures/bad.svg"), "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>");
  await add(
    BANNER,
    "![the plan](../pictures/plan.png) ![outside](../../secret.png) ![link](../pictures/link.png) ![drawn](../pictures/bad.svg) ![far](https://pictures.example/x.png)",
  );
  expect(await run("publish", "docs", "--to", "site").status).toBe(0);
  const page = await readFile(join(folder, "site/builds/over-stage-banner.html"), "utf8");
  const [, src = ""] = /<img src="\.\.\/(pictures\/[0-9a-f]{16}\.png)" alt="the plan"/u.exec(page) ?? [];
  expect(await readFile(join(folder, "site", src))).toEqual(PNG);
  expect(page.match(/<img/gu)).toHaveLength(1);
  for (const words of ["outside", "link", "drawn", "far"]) expect(page).toContain(`<span>[${words}]</span>`);
});

test("--watch publishes again when something changes, and writes only what changed", { timeout: 120_000 }, async () => {
  await onlyBanner();
  const { status, end, out } = run("publish", "docs", "--to", "docs/site", "--watch");
  await until(() => out().includes("Watching"));
  // What a watcher is told of before it has looked round is lost: wait for its first sign of life.
  const written = async (path: string): Promise<number> => (await stat(join(folder, "docs/site", path))).mtimeMs;
  const before = { rule: await written("rules/data.loop.html"), sheet: await written("builds/over-stage-banner.html") };
  let count = 0;
  while (!out().includes("as before")) {
    count += 1;
    await add(BANNER, `One more line, ${count}.`);
    await new Promise((resolve) => setTimeout(resolve, 400));
  }
  await until(() => /\d+ files? written, \d+ as before/u.test(out()));
  expect(await written("rules/data.loop.html")).toBe(before.rule);
  expect(await written("builds/over-stage-banner.html")).toBeGreaterThan(before.sheet);
  expect(await readFile(join(folder, "docs/site/builds/over-stage-banner.html"), "utf8")).toContain("One more line");
  // A mistake is told, and the watch goes on.
  const good = await readFile(join(folder, "docs/house-standard.yaml"), "utf8");
  await writeFile(join(folder, "docs/house-standard.yaml"), "house-standard: [\n");
  await until(() => out().includes("plumbmark:"));
  const rounds = (): number => out().match(/as before/gu)?.length ?? 0;
  const told = rounds();
  await writeFile(join(folder, "docs/house-standard.yaml"), good);
  await until(() => rounds() > told);
  end();
  expect(await status).toBe(0);
});

test("of a plugin whose package is not installed it is said what installs it", async () => {
  await onlyBanner();
  await writeFile(join(folder, "docs/broken.mjs"), 'import "rules-of-nobody";\n');
  const path = join(folder, "docs/house-standard.yaml");
  await writeFile(path, `${await readFile(path, "utf8")}\nrules-from: ["./broken.mjs"]\n`);
  const { status, out } = run("publish", "docs", "--to", "site");
  expect(await status).toBe(2);
  expect(out()).toMatch(
    /\.\/broken\.mjs could not be used: the package rules-of-nobody is not installed\. Run `npm install`/u,
  );
  expect(out()).not.toContain(folder.concat("/docs/broken.mjs"));
});

test("a plugin that fails is told by the exit status, and the site is published", async () => {
  await onlyBanner();
  await writeFile(join(folder, "docs/broken.mjs"), "throw new Error('it cannot begin');\n");
  const path = join(folder, "docs/house-standard.yaml");
  const text = await readFile(path, "utf8");
  await writeFile(path, `${text}\nrules-from: ["./broken.mjs"]\n`);
  const { status, out } = run("publish", "docs", "--to", "site");
  expect(await status).toBe(2);
  expect(out()).toContain("a plugin failed");
  expect(await readFile(join(folder, "site/builds/over-stage-banner.html"), "utf8")).toContain("plugin.failed");
});
