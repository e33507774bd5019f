import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { InspectionRecord } from "@plumbmark/core";
import { onTestFinished } from "vitest";
import { gitIdentity } from "../git-identity.js";
import { plumbmark, type Told } from "../plumbmark.js";
import { approveCopy, copyStarter, madeOnce } from "../starter.js";

export const env = { ...process.env, ...gitIdentity };

/** The command as it is built and installed. */
export const command = fileURLToPath(new URL("../../packages/cli/dist/plumbmark.js", import.meta.url));

/** A folder of its own, taken away after the test. */
export function scratch(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-git-")));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export class Repository {
  constructor(readonly folder: string) {}

  git(...words: string[]): string {
    return execFileSync("git", words, { cwd: this.folder, env, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
  }

  read(path: string): string {
    return readFileSync(join(this.folder, path), "utf8");
  }

  write(path: string, content: string | Uint8Array): void {
    mkdirSync(dirname(join(this.folder, path)), { recursive: true });
    writeFileSync(join(this.folder, path), content);
  }

  /** Changes a text of a file; a text that is not there is a mistake of the test. */
  change(path: string, from: string, to: string): void {
    const before = this.read(path);
    if (!before.includes(from)) throw new Error(`${path} has no ${from}`);
    this.write(path, before.replace(from, to));
  }

  /** Has the builds approved as they are in the work tree. */
  approve(): void {
    approveCopy(this.folder);
  }

  remove(path: string): void {
    rmSync(join(this.folder, path), { recursive: true });
  }

  commit(message = "A change"): void {
    this.git("add", "--all");
    this.git("commit", "--quiet", "--no-verify", "--allow-empty", "--message", message);
  }

  plumbmark(...words: string[]): Promise<Told> {
    return plumbmark(this.folder, words, { today: "2027-01-01" });
  }

  /** Files of the record and their verdicts. */
  async verdicts(...words: string[]): Promise<Readonly<Record<string, string>>> {
    const { status, out, err } = await this.plumbmark("inspect", "--as", "json", ...words);
    if (status === 2) throw new Error(err);
    const { documents } = JSON.parse(out) as InspectionRecord;
    return Object.fromEntries(documents.map(({ file, verdict }) => [file, verdict]));
  }
}

/** Made once, and copied for every test: git takes longer to begin than a copy does. */
function prototype(name: string, make: (repository: Repository) => void): () => Repository {
  let made: string | undefined;
  return () => {
    made ??= madeOnce(name, (place) => make(new Repository(realpathSync(place))));
    const repository = new Repository(scratch());
    cpSync(made, repository.folder, { recursive: true });
    return repository;
  };
}

/** Builds that no test about git names, and that every inspection would read. */
const LEFT_OUT = ["harbour-header", "lobby-ribbon", "summer-stage"];

/** Documents of the starter under git, nothing committed yet. */
export const unborn = prototype("unborn", (repository) => {
  copyStarter(repository.folder);
  for (const name of LEFT_OUT) repository.remove(`builds/${name}.md`);
  repository.git("init", "--quiet", "--initial-branch=main");
});

/** The same, committed; the build that is not ready is left out. */
export const committed = prototype("committed", (repository) => {
  cpSync(unborn().folder, repository.folder, { recursive: true });
  repository.remove("builds/gala-wall.md");
  repository.commit("The beginning");
});
