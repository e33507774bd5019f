import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { onTestFinished } from "vitest";
import { SMALL } from "./small.js";

/** What stands in every file outside; it may never come out of a command. */
export const SECRET = "kept-outside";

const PNG = Buffer.concat([Buffer.from("89504e470d0a1a0a", "hex"), Buffer.from(SECRET)]);

const OUTSIDE: Readonly<Record<string, Uint8Array | string>> = {
  "f.md": `---\nbuild: ${SECRET}\ntitle: ${SECRET}\nstatus: draft\n---\n\n# ${SECRET}\n`,
  "f.yaml": `house-standard: ${SECRET}\n`,
  "f.png": PNG,
};

const STANDARD = `${SMALL["house-standard.yaml"]}documents: [builds/*.md]\n`;

/** A docs repository in `docs`, with files beside it in `out` and links that lead there. */
export function withOutside(more: Readonly<Record<string, Uint8Array | string>> = {}): string {
  const top = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-paths-")));
  onTestFinished(() => rmSync(top, { recursive: true, force: true }));
  for (const folder of ["docs/builds", "docs/parts", "docs/.git", "out"])
    mkdirSync(join(top, folder), { recursive: true });
  for (const [path, content] of Object.entries({ ...SMALL, "house-standard.yaml": STANDARD, ...more }))
    writeFileSync(join(top, "docs", path), content);
  for (const [path, content] of Object.entries(OUTSIDE)) {
    writeFileSync(join(top, "out", path), content);
    symlinkSync(`../out/${path}`, join(top, "docs", `linked-${path}`));
  }
  symlinkSync("../out", join(top, "docs/link"));
  return top;
}

/** How a path is given that leads where it should not; `file` is one of those outside. */
export interface Hostile {
  readonly name: string;
  readonly of: (top: string, file: string) => string;
  /** A pattern may have this form, and finds nothing by it. */
  readonly quiet?: true;
}

/**
 * Ways of leading out that MITRE lists for path traversal (CWE-22 with 23, 36, 39, 40, 59, 158, 177) and names that
 * file systems take amiss (Microsoft, "Naming Files, Paths, and Namespaces"; Unicode TR36 on direction). From memory.
 */
export const HOSTILE: readonly Hostile[] = [
  { name: "upwards", of: (_, file) => `../out/${file}` },
  { name: "upwards behind a point", of: (_, file) => `./../out/${file}` },
  { name: "upwards in the middle", of: (_, file) => `builds/../../out/${file}` },
  { name: "far upwards", of: (top, file) => `${"../".repeat(40)}${top.slice(1)}/out/${file}` },
  { name: "absolute", of: (top, file) => join(top, "out", file) },
  { name: "the root of the disk", of: () => "/" },
  { name: "the folder above", of: () => ".." },
  { name: "an address of a file", of: (top, file) => pathToFileURL(join(top, "out", file)).href },
  { name: "an address of a file without slashes", of: (_, file) => `file:../out/${file}` },
  { name: "an address of a host", of: (_, file) => `https://example.org/${file}` },
  { name: "backslashes", of: (_, file) => `..\\out\\${file}` },
  { name: "a drive", of: (_, file) => `C:\\${file}` },
  { name: "a share", of: (_, file) => `\\\\host\\share\\${file}` },
  { name: "a share with slashes", of: (_, file) => `//host/share/${file}` },
  { name: "points by their numbers", of: (_, file) => `%2e%2e/out/${file}`, quiet: true },
  { name: "slashes by their numbers", of: (_, file) => `..%2fout%2f${file}`, quiet: true },
  { name: "by a link to a folder", of: (_, file) => `link/${file}` },
  { name: "by a link to a file", of: (_, file) => `linked-${file}` },
  { name: "a zero byte", of: (_, file) => `builds/a.md\0/../../../out/${file}` },
  { name: "a zero byte and nothing else", of: () => "\0" },
  { name: "the direction turned", of: (_, file) => `\u202e${[...file].reverse().join("")}` },
  { name: "a command of a terminal", of: () => "\u001b[2J\u001b]0;x\u0007" },
  { name: "the home", of: (_, file) => `~/${file}`, quiet: true },
  { name: "a variable", of: (_, file) => `$HOME/${file}`, quiet: true },
  { name: "a device of Windows", of: () => "CON", quiet: true },
  { name: "a name of 300 characters", of: () => `${"a".repeat(300)}.yaml`, quiet: true },
  { name: "9,000 characters", of: () => `${"a/".repeat(4500)}f.yaml` },
  { name: "70,000 characters", of: () => "a".repeat(70_000) },
  { name: "nothing", of: () => "" },
  { name: "a point", of: () => ".", quiet: true },
  { name: "a choice upwards", of: (_, file) => `{../out,parts}/${file}` },
  { name: "a choice upwards by a sign", of: (_, file) => `@(..)/out/${file}` },
  { name: "points as a class of signs", of: (_, file) => `[.][.]/out/${file}`, quiet: true },
  { name: "upwards behind a no", of: (_, file) => `!../out/${file}` },
  { name: "a negative of nothing", of: () => "!" },
];

/** Everything in a folder, links not followed. */
export const held = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((each) => each.isFile())
      .map((each) => join(each.parentPath, each.name))
      .map((path) => [path.slice(folder.length + 1), readFileSync(path, "latin1")]),
  );
