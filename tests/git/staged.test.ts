import { execFileSync, spawnSync } from "node:child_process";
import { symlinkSync, unlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, inject, test } from "vitest";
import { localDay } from "../../packages/cli/src/terminal/context.js";
import { plumbmark } from "../plumbmark.js";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { command, committed, env, Repository, scratch, unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const FASCIAS = "builds/riser-fascias.md";
/** A breaker far too small for the load: the document is not ready. */
const spoil = (repository: Repository, path = BANNER): void =>
  repository.change(path, path === BANNER ? "breaker: 20 A" : "breaker: 15 A", "breaker: 1 A");

test("nothing staged concerns nothing", async () => {
  const { status, out } = await committed().plumbmark("inspect", "--staged");
  expect({ status, out }).toEqual({ status: 0, out: "No build document was touched, and none is concerned.\n" });
});

test("before the first commit everything staged is judged, and only that", async () => {
  const repository = unborn();
  repository.git("add", "house-standard.yaml", "parts", "stock.yaml", "letters", BANNER);
  expect(await repository.verdicts("--staged")).toEqual({ [BANNER]: "ready" });
});

test("what is staged is judged, not what lies in the work tree", async () => {
  const repository = committed();
  spoil(repository);
  expect(await repository.verdicts("--staged")).toEqual({});
  repository.git("add", BANNER);
  repository.change(BANNER, "breaker: 1 A", "breaker: 20 A");
  expect(await repository.verdicts("--staged")).toEqual({ [BANNER]: "not ready" });
});

test("a document that was staged in part is judged by its staged part", async () => {
  const repository = committed();
  repository.change(BANNER, "# Over-stage", "# The over-stage");
  repository.approve();
  repository.git("add", BANNER);
  spoil(repository);
  expect(await repository.verdicts("--staged")).toEqual({ [BANNER]: "ready" });
});

test("a staged part is judged by the documents that use it, and only they are named", async () => {
  const repository = committed();
  repository.change("parts/power.yaml", "jumper-c14-c13-sleeved:", "jumper-gone:");
  repository.git("add", "parts");
  repository.git("checkout-index", "--force", "--all");
  const verdicts = await repository.verdicts("--staged");
  expect(verdicts).toEqual({ [FASCIAS]: "not ready" });
});

test("a part that changed only in the work tree concerns nobody", async () => {
  const repository = committed();
  repository.change("parts/power.yaml", "jumper-c14-c13-sleeved:", "jumper-gone:");
  spoil(repository);
  repository.git("add", BANNER);
  expect(await repository.verdicts("--staged")).toEqual({ [BANNER]: "not ready" });
});

test("a lot that shrinks concerns the builds that took panels of it", async () => {
  const repository = committed();
  repository.change("stock.yaml", "count: 24", "count: 4");
  repository.git("add", "stock.yaml");
  expect(await repository.verdicts("--staged")).toEqual({ [FASCIAS]: "not ready" });
});

test("the staged house standard is the one that counts", async () => {
  const repository = committed();
  repository.change("house-standard.yaml", "sections: [", "sections: [Load-out plan, ");
  repository.git("add", "house-standard.yaml");
  repository.git("checkout", "--quiet", "HEAD", "--", "README.md");
  const verdicts = await repository.verdicts("--staged");
  expect(Object.keys(verdicts)).toContain(BANNER);
  expect(verdicts[BANNER]).toBe("not ready");
});

test("two builds of one name are told of both, though only one was touched", async () => {
  const repository = committed();
  repository.write("builds/second.md", repository.read(BANNER));
  repository.git("add", "builds/second.md");
  expect(await repository.verdicts("--staged")).toMatchObject({
    [BANNER]: "not ready",
    "builds/second.md": "not ready",
  });
});

test("a document nobody touched, and that was not ready before, is not held against a commit", async () => {
  const repository = committed();
  spoil(repository);
  repository.approve();
  repository.commit();
  repository.change("builds/side-strips.md", "revision: ", "revision: 1");
  repository.approve();
  repository.git("add", "builds");
  expect(await repository.verdicts("--staged")).toEqual({ "builds/side-strips.md": "ready" });
});

test("a renamed document is judged under its new name", async () => {
  const repository = committed();
  repository.git("mv", BANNER, "builds/renamed.md");
  const verdicts = await repository.verdicts("--staged");
  expect(verdicts["builds/renamed.md"]).toBe("ready");
  expect(verdicts[BANNER]).toBeUndefined();
});

test("a deleted document is not judged; one that leads to it is", async () => {
  const repository = committed();
  repository.change(FASCIAS, "## Scope\n", `## Scope\n\nSee [the banner](over-stage-banner.md).\n`);
  repository.commit();
  repository.git("rm", "--quiet", BANNER);
  // Two more documents of the starter lead to the banner's.
  const others = ["builds/side-strips.md", "builds/small-screen.md"];
  expect(Object.keys(await repository.verdicts("--staged"))).toEqual([FASCIAS, ...others]);
});

const NAMES = [
  "builds/two words.md",
  "builds/ünïcode – stage.md",
  'builds/"quoted".md',
  "builds/tab\there.md",
  "builds/line\nend.md",
  "builds/-dash.md",
  "builds/$(echo).md",
  "builds/:(top)x.md",
  "builds/back\\slash.md",
];
const { deep, seed } = inject("effort");

test.each(notEmpty(deep ? NAMES : some(NAMES, 2, seed)))("a document may be called %j", async (path) => {
  const repository = committed();
  repository.write(path, repository.read(BANNER).replace("breaker: 20 A", "breaker: 1 A"));
  repository.git("add", "--", `./${path}`);
  expect((await repository.verdicts("--staged"))[path]).toBe("not ready");
});

test("in a folder below the top of the work tree the whole docs repository counts", async () => {
  const repository = committed();
  spoil(repository);
  repository.git("add", BANNER);
  const below = new Repository(join(repository.folder, "builds"));
  expect(await below.verdicts("--staged")).toEqual({ [BANNER]: "not ready" });
});

test("a docs repository in a folder of a larger one is found, and other files are left alone", async () => {
  const outer = new Repository(scratch());
  outer.git("init", "--quiet");
  execFileSync("cp", ["-r", committed().folder, join(outer.folder, "docs")]);
  outer.remove("docs/.git");
  outer.commit();
  const docs = new Repository(join(outer.folder, "docs"));
  outer.write("elsewhere.md", "---\nbuild: elsewhere\n---\n");
  spoil(docs);
  outer.git("add", "--all");
  expect(await docs.verdicts("--staged")).toEqual({ [BANNER]: "not ready" });
});

test("a document in a submodule belongs to the other repository", async () => {
  const inner = committed();
  const outer = committed();
  outer.git("-c", "protocol.file.allow=always", "submodule", "--quiet", "add", inner.folder, "builds/inner");
  expect(await outer.verdicts("--staged")).toEqual({});
  const submodule = new Repository(join(outer.folder, "builds/inner"));
  spoil(submodule);
  submodule.git("add", BANNER);
  expect(await submodule.verdicts("--staged")).toEqual({ [BANNER]: "not ready" });
});

test("each work tree of a repository has its own staged files", async () => {
  const repository = committed();
  const folder = join(scratch(), "second");
  repository.git("worktree", "add", "--quiet", "-b", "second", folder);
  const second = new Repository(folder);
  spoil(second);
  second.git("add", BANNER);
  expect(await second.verdicts("--staged")).toEqual({ [BANNER]: "not ready" });
  expect(await repository.verdicts("--staged")).toEqual({});
});

test("a merge in progress brings the documents of both sides", async () => {
  const repository = committed();
  repository.git("switch", "--quiet", "-c", "other");
  spoil(repository, FASCIAS);
  repository.commit();
  repository.git("switch", "--quiet", "main");
  repository.change(BANNER, "# Over-stage", "# The over-stage");
  repository.commit();
  repository.git("merge", "--quiet", "--no-commit", "--no-ff", "other");
  expect(await repository.verdicts("--staged")).toEqual({ [FASCIAS]: "not ready" });
});

test("a merge that is not settled is not ready, and says so", async () => {
  const repository = committed();
  repository.git("switch", "--quiet", "-c", "other");
  repository.change(BANNER, "# Over-stage", "# One over-stage");
  repository.commit();
  repository.git("switch", "--quiet", "main");
  repository.change(BANNER, "# Over-stage", "# Another over-stage");
  repository.commit();
  expect(() => repository.git("merge", "--quiet", "other")).toThrow();
  const { status, out } = await repository.plumbmark("inspect", "--staged");
  expect(status).toBe(1);
  expect(out).toContain("A merge has left two versions of the file.");
});

test("a link inside the docs repository is followed, one that leads out is refused", async () => {
  const repository = committed();
  symlinkSync("over-stage-banner.md", join(repository.folder, "builds/link.md"));
  symlinkSync("../../../etc/hostname", join(repository.folder, "builds/out.md"));
  repository.git("add", "builds");
  const { out } = await repository.plumbmark("inspect", "--staged");
  expect(out).toContain("builds/link.md is called over-stage-banner, too.");
  expect(out).toContain("The link leads outside the docs repository.");
  unlinkSync(join(repository.folder, "builds/out.md"));
});

test("a content git has lost is not ready", async () => {
  const repository = committed();
  spoil(repository);
  repository.git("add", BANNER);
  const id = repository.git("rev-parse", `:${BANNER}`).trim();
  unlinkSync(join(repository.folder, ".git/objects", id.slice(0, 2), id.slice(2)));
  const { status, out } = await repository.plumbmark("inspect", "--staged");
  expect({ status, lost: out.includes("Git does not have the content of the file.") }).toEqual({
    status: 1,
    lost: true,
  });
});

test("outside git, and with a revision that does not exist, it says what to do", async () => {
  const outside = await new Repository(scratch()).plumbmark("inspect", "--staged");
  expect(outside.status).toBe(2);
  expect(outside.err).toContain("is in no work tree of git");
  const unknown = await committed().plumbmark("inspect", "--since", "--output=x");
  expect(unknown.status).toBe(2);
  const both = await committed().plumbmark("inspect", "--since", "main", "--staged");
  expect(both.err).toContain("do not go together");
});

test("what is kept never changes what a staged change comes to", async () => {
  const repository = committed();
  for (const name of ["gallery-header", "riser-fascias", "side-strips"]) repository.remove(`builds/${name}.md`);
  repository.commit();
  const built = (...words: string[]) => {
    const given = [command, "inspect", "--staged", "--as", "json", ...words];
    const { status, stdout, stderr } = spawnSync(process.execPath, given, { cwd: repository.folder, env });
    return { status, out: stdout.toString(), err: stderr.toString() };
  };
  const steps: readonly (() => void)[] = [
    () => repository.write("builds/small-screen.md", `${repository.read("builds/small-screen.md")}\nSeen again.\n`),
    () => repository.write("stock.yaml", repository.read("stock.yaml").replace(/count: \d+/u, "count: 1")),
    () => repository.git("mv", "builds/small-screen.md", "builds/ä screen.md"),
    () => repository.write("house-standard.yaml", repository.read("house-standard.yaml").replace("75 %", "20 %")),
    () => repository.commit(),
    () => repository.git("rm", "-q", "stock.yaml"),
  ];
  // A step stands on those before it; what it comes to is looked at after some, others in each run.
  const looked = deep ? steps : some(steps, 1, seed);
  for (const step of steps) {
    step();
    repository.git("add", "--all");
    if (!looked.includes(step)) continue;
    const today = localDay(new Date());
    const cold = await plumbmark(repository.folder, ["inspect", "--staged", "--as", "json", "--no-cache"], { today });
    expect(cold.out + cold.err).not.toBe("");
    expect(built()).toEqual(cold);
    // Now with what was just kept.
    expect(built()).toEqual(cold);
  }
}, 120_000);
