import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Data, type InspectionRecord, validate } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { afterAll, beforeAll, expect, test } from "vitest";
import { oldForm } from "../../../../tests/old-form.js";
import { plumbmark, type Told } from "../../../../tests/plumbmark.js";
import { ownFile } from "../own-file.js";

let folder: string;

const run = (...words: readonly string[]): Promise<Told> => plumbmark(folder, words, { today: "2027-01-01" });

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "plumbmark-collate-"));
  for (const name of ["north", "south"]) {
    const at = join(folder, "repositories", name);
    mkdirSync(join(at, "builds"), { recursive: true });
    cpSync(join(starterRepository, "parts"), join(at, "parts"), { recursive: true });
    cpSync(join(starterRepository, "stock.yaml"), join(at, "stock.yaml"));
    writeFileSync(join(at, "house-standard.yaml"), `house-standard: House of ${name}\npractice: us\n`);
    const builds = name === "north" ? ["small-screen", "side-strips"] : ["small-screen"];
    for (const build of builds) cpSync(join(oldForm, `builds/${build}.md`), join(at, `builds/${build}.md`));
  }
  mkdirSync(join(folder, "records"));
  // The fan-out as the help has it.
  const command = `ls repositories | xargs -P 2 -I% sh -c '"$NODE" "$PROGRAM" inspect --no-cache --as json repositories/% > records/%.json; test $? -le 1'`;
  const { status, stderr } = spawnSync("sh", ["-c", command], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, NODE: process.execPath, PROGRAM: ownFile("dist/plumbmark.js").pathname },
  });
  expect(status, stderr).toBe(0);
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("records made side by side become one record of the same form", async () => {
  const { out, status } = await run("collate", "--as", "json", "records/north.json", "records/south.json");
  const record = JSON.parse(out) as InspectionRecord;
  const given = { data: record as unknown as Data, places: new Map(), keys: new Map(), mistakes: [] };
  expect(validate("record", given)).toEqual([]);
  expect(record.documents.map(({ file }) => file).sort()).toEqual([
    "north/builds/side-strips.md",
    "north/builds/small-screen.md",
    "south/builds/small-screen.md",
  ]);
  const single = ["north", "south"].map(
    (name) => JSON.parse(readFileSync(join(folder, `records/${name}.json`), "utf8")) as InspectionRecord,
  );
  const checks = single.reduce((sum, { totals }) => sum + totals.checks, 0);
  // The name that both give a build adds a check to each of the two documents; what they share may add more.
  expect(record.totals.checks).toBeGreaterThanOrEqual(checks + 2);
  expect(record.totals.checks).toBe(record.documents.reduce((sum, { counts }) => sum + counts.checks, 0));
  expect(status).toBe(1);
});

test("a name two repositories give a build stands against both", async () => {
  const { out } = await run("collate", "records/north.json", "records/south.json");
  expect(out).toContain("south/builds/small-screen.md is called small-screen, too.");
  expect(out).toContain("north/builds/small-screen.md is called small-screen, too.");
  expect((await run("collate", "records/south.json")).out).not.toContain("too.");
});

test("what is no record is told with its place", async () => {
  writeFileSync(join(folder, "bad.json"), '{\n  "record": 1,\n  oops\n}\n');
  writeFileSync(join(folder, "other.json"), '{\n  "record": 2\n}\n');
  expect(await run("collate", "bad.json")).toMatchObject({ status: 2, out: "" });
  expect((await run("collate", "bad.json")).err).toContain("bad.json:3:");
  expect((await run("collate", "other.json")).err).toMatch(/other\.json:\d+:\d+: this is no record/u);
  expect((await run("collate", "none.json")).err).toContain("none.json: The file is not there.");
  expect((await run("collate", "records/north.json", "records/north.json")).status).toBe(2);
});
