import { execFileSync, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { expect, inject, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { some } from "../run/some.js";
import { madeOnce } from "../starter.js";
import { command, committed, env, Repository, scratch } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";

const plumbmark = (folder: string, ...words: string[]): { status: number | null; out: string; err: string } => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], {
    cwd: folder,
    env,
    encoding: "utf8",
  });
  return { status, out: stdout, err: stderr };
};

/** Without the programs of this workspace, which npm puts in front. */
const bare = {
  ...env,
  PATH: process.env.PATH?.split(delimiter)
    .filter((each) => !each.includes("node_modules"))
    .join(delimiter),
};

const commit = (folder: string, ...words: string[]): { status: number | null; said: string } => {
  const { status, stdout, stderr } = spawnSync("git", ["commit", "--quiet", "--message", "A change", ...words], {
    cwd: folder,
    env: bare,
    encoding: "utf8",
  });
  return { status, said: stdout + stderr };
};

const spoil = (repository: Repository): void => repository.change(BANNER, "breaker: 20 A", "breaker: 1 A");

test("a commit that makes a build not ready is refused, and one that does not goes through", () => {
  const repository = committed();
  expect(plumbmark(repository.folder, "hook").status).toBe(0);
  spoil(repository);
  const refused = commit(repository.folder, "--all");
  expect(refused.status).not.toBe(0);
  expect(refused.said).toContain("power.circuit-load");
  repository.change(BANNER, "breaker: 1 A", "breaker: 20 A");
  repository.change(BANNER, "# Over-stage", "# The over-stage");
  // What was changed has to be approved anew.
  expect(commit(repository.folder, "--all").said).toContain("document.sign-off");
  repository.approve();
  expect(commit(repository.folder, "--all").status).toBe(0);
});

test("a commit of some files is judged by those files, as git stages them for it", () => {
  const repository = committed();
  plumbmark(repository.folder, "hook");
  spoil(repository);
  repository.git("add", BANNER);
  repository.change("builds/side-strips.md", "## Scope", "## Scope");
  repository.write("README.md", "Something else\n");
  expect(commit(repository.folder, "--only", "--", "README.md").status).toBe(0);
  expect(commit(repository.folder, "--", BANNER).status).not.toBe(0);
});

test("it works from a folder below, in a second work tree, and for docs kept in a folder of a larger repository", () => {
  const outer = new Repository(scratch());
  outer.git("init", "--quiet");
  const docs = "-docs of 'ours'";
  execFileSync("cp", ["-r", "--", committed().folder, join(outer.folder, docs)]);
  outer.remove(`${docs}/.git`);
  outer.commit();
  expect(plumbmark(join(outer.folder, docs, "builds"), "hook").status).toBe(0);
  const inner = new Repository(join(outer.folder, docs));
  spoil(inner);
  expect(commit(join(outer.folder, docs, "builds"), "--all").status).not.toBe(0);
  const second = join(scratch(), "second");
  outer.git("worktree", "add", "--quiet", second);
  spoil(new Repository(join(second, docs)));
  expect(commit(second, "--all").status).not.toBe(0);
});

test("it is put in place once, and taken away", () => {
  const { folder } = committed();
  plumbmark(folder, "hook");
  const path = join(folder, ".git/hooks/pre-commit");
  const first = statSync(path);
  expect(first.mode & 0o111).toBe(0o111);
  expect(plumbmark(folder, "hook").out).toContain("already");
  expect(statSync(path).mtimeMs).toBe(first.mtimeMs);
  expect(plumbmark(folder, "hook", "--remove").status).toBe(0);
  expect(existsSync(path)).toBe(false);
  expect(plumbmark(folder, "hook", "--remove").status).toBe(0);
});

test("somebody else's hook is left as it is", () => {
  const repository = committed();
  repository.write(".git/hooks/pre-commit", "#!/bin/sh\nexit 0\n");
  for (const words of [["hook"], ["hook", "--remove"]]) {
    const { status, err } = plumbmark(repository.folder, ...words);
    expect({ status, left: err.includes("left as it is") }).toEqual({ status: 2, left: true });
  }
  expect(repository.read(".git/hooks/pre-commit")).toBe("#!/bin/sh\nexit 0\n");
});

test("core.hooksPath is honoured inside the work tree, and a folder shared by others is not touched", () => {
  const repository = committed();
  repository.git("config", "core.hooksPath", ".hooks");
  expect(plumbmark(repository.folder, "hook").status).toBe(0);
  spoil(repository);
  expect(commit(repository.folder, "--all").status).not.toBe(0);
  const shared = scratch();
  repository.git("config", "core.hooksPath", shared);
  expect(plumbmark(repository.folder, "hook").status).toBe(2);
  expect(existsSync(join(shared, "pre-commit"))).toBe(false);
});

test("without the program a commit does not pass unseen", () => {
  const repository = committed();
  plumbmark(repository.folder, "hook");
  const path = join(repository.folder, ".git/hooks/pre-commit");
  repository.write(
    ".git/hooks/pre-commit",
    repository.read(".git/hooks/pre-commit").replaceAll(command, "/nowhere/plumbmark.js"),
  );
  chmodSync(path, 0o755);
  spoil(repository);
  const { status, said } = commit(repository.folder, "--all");
  expect({ passed: status === 0, told: said.includes("is not installed here") }).toEqual({ passed: false, told: true });
});

test("outside git, and where there is no docs repository, it says what to do", () => {
  expect(plumbmark(scratch(), "hook").err).toContain("is in no work tree of git");
  const empty = new Repository(scratch());
  empty.git("init", "--quiet");
  expect(plumbmark(empty.folder, "hook").err).toContain("No house standard");
});

/** A folder with `plumbmark` as an installed program, for managers that look for it by name. */
function onPath(): string {
  const bin = join(scratch(), "bin");
  mkdirSync(bin);
  writeFileSync(join(bin, "plumbmark"), `#!/bin/sh\nexec '${process.execPath}' '${command}' "$@"\n`, { mode: 0o755 });
  symlinkSync(process.execPath, join(bin, "node"));
  return bin;
}

interface Manager {
  readonly name: string;
  readonly prepare: (repository: Repository) => readonly (readonly string[])[];
}

/** As each manager's own manual has it, with the line our documentation gives. */
const managers: readonly Manager[] = [
  {
    name: "husky",
    prepare: (repository) => {
      repository.write(".husky/pre-commit", "plumbmark inspect --staged\n");
      return [["husky"]];
    },
  },
  {
    name: "simple-git-hooks",
    prepare: (repository) => {
      repository.write(".simple-git-hooks.json", '{"pre-commit": "plumbmark inspect --staged"}\n');
      return [["simple-git-hooks"]];
    },
  },
  {
    name: "lefthook",
    prepare: (repository) => {
      repository.write("lefthook.yml", "pre-commit:\n  jobs:\n    - run: plumbmark inspect --staged\n");
      return [["lefthook", "install"]];
    },
  },
];

/** Each has to be fetched and begun: an ordinary run tries one, another each time, and a deep run all. */
const { deep, seed } = inject("effort");
const tried = deep ? managers : some(managers, 1, seed);

let installed: string | undefined;

/** A folder with all of them installed: npm takes longer to start than to fetch them. */
const withManagers = (): string =>
  madeOnce("managers", (folder) => {
    writeFileSync(join(folder, "package.json"), '{"name": "docs", "version": "1.0.0", "private": true}\n');
    const words = ["--no-audit", "--no-fund", "--prefer-offline", "--ignore-scripts", "--save-dev"];
    execFileSync("npm", ["install", ...words, ...tried.map(({ name }) => name)], { cwd: folder, stdio: "pipe" });
  });

test.each(notEmpty(tried))("a commit is refused under the hook manager $name", { timeout: 180_000 }, ({ prepare }) => {
  const repository = committed();
  const path = { ...env, PATH: `${onPath()}${delimiter}${process.env.PATH}`, CI: "" };
  installed ??= withManagers();
  cpSync(installed, repository.folder, { recursive: true, verbatimSymlinks: true });
  repository.write(".gitignore", "node_modules/\n");
  for (const [program, ...words] of prepare(repository))
    execFileSync(join(repository.folder, "node_modules/.bin", program as string), words, {
      cwd: repository.folder,
      env: path,
      stdio: "pipe",
    });
  repository.git("add", "--all");
  const attempt = (): number | null =>
    spawnSync("git", ["commit", "--quiet", "--all", "--message", "A change"], {
      cwd: repository.folder,
      env: path,
      encoding: "utf8",
    }).status;
  expect(attempt()).toBe(0);
  spoil(repository);
  expect(attempt()).not.toBe(0);
});
