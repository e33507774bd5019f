import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { plumbmark } from "../../../../tests/plumbmark.js";

// Unicode 16, 23.2 and UAX 9: marks that set a direction of reading. ECMA-48: controls, of which ESC begins those that
// move a terminal's cursor. Neither may come from a document, a catalogue, a house standard or a name of a file.

const CLEAR = "\u001b[2J";
const RED = "\u001b[31m";
const EVIL = `a${CLEAR}b${RED}c\u202ed\u2066e\u009b1mf\u0007g\u0008h\u061ci\u200fj`;
const UNSAFE = /[^\P{Cc}\n\t]|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-safe-"));
  for (const each of ["builds", "parts"]) mkdirSync(join(folder, each));
  const quoted = JSON.stringify(EVIL);
  writeFileSync(
    join(folder, "house-standard.yaml"),
    `house-standard: ${quoted}\nown-rules:\n  house.own:\n    states: ${quoted}\n    level: shall\n    each: faces\n    require: {properties: {spares: {minimum: 2}}}\n    mend: ${quoted}\n`,
  );
  writeFileSync(join(folder, "parts/own.yaml"), `${quoted}: {kind: panel, name: ${quoted}}\n`);
  writeFileSync(
    join(folder, `builds/x\u202e${"\u001b"}[1m.md`),
    `---\nbuild: ${quoted}\ntitle: ${quoted}\nstatus: draft\n${quoted}: 1\nfaces:\n  ${quoted}: {panel: ${quoted}, columns: 2, rows: 1}\n---\n\n# ${"\u202e"} ${RED}\n`,
  );
});
afterAll(() => rmSync(folder, { recursive: true }));

const document = `builds/x\u202e${"\u001b"}[1m.md`;
const commands: readonly (readonly string[])[] = [
  ...["text", "json", "sarif", "gnu", "markdown"].map((form) => ["inspect", "--every", "--as", form]),
  ["inspect", document],
  ["inspect", `no${EVIL}`],
  ["inspect", "--standard", `no${EVIL}.yaml`],
  ["workings", document],
  ["workings", document, EVIL],
  ...["text", "markdown", "csv"].map((form) => ["takeoff", document, "--as", form]),
  ["takeoff", document, EVIL],
  ...["text", "json", "markdown"].map((form) => ["rules", "--as", form]),
  ["rules", "house.own"],
  ["rules", EVIL],
  ["publish", "--to", `${EVIL}/x`],
  ["collate", EVIL],
  [EVIL],
];

describe.each(commands.map((words) => [words.join(" ").replace(UNSAFE, "?").slice(0, 40), words] as const))(
  "%s",
  (_, words) => {
    test("prints nothing that moves a cursor or turns a direction", async () => {
      const { out, err } = await plumbmark(folder, words);
      expect(out.length + err.length).toBeGreaterThan(0);
      expect(UNSAFE.exec(out.replaceAll("\r\n", "\n"))).toBeNull();
      expect(UNSAFE.exec(err)).toBeNull();
    });

    test("in colour, nothing but our own colours", async () => {
      const { out, err } = await plumbmark(folder, words, { colour: 3 });
      const coloured = out.replaceAll("\r\n", "\n").replace(new RegExp(`${"\u001b"}\\[[\\d;]*m`, "gu"), "");
      expect(UNSAFE.exec(coloured)).toBeNull();
      expect(out).not.toContain(RED);
      expect(UNSAFE.exec(err)).toBeNull();
    });
  },
);

test("what is escaped in JSON is the same when it is read", async () => {
  const { out, err } = await plumbmark(folder, ["inspect", "--as", "json"]);
  expect(err).not.toContain("cannot be used");
  expect(JSON.parse(out).standard).toBe(EVIL);
});
