import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type InspectionRecord, schemas } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { oldFormText } from "../../../../tests/old-form.js";
import { plumbmark, type Told } from "../../../../tests/plumbmark.js";
import { notEmpty } from "../../../../tests/run/not-empty.js";
import { approveCopy } from "../../../../tests/starter.js";

let top: string;

beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), "plumbmark-"));
  await put("house-standard.yaml", "house-standard: House\nrequirements: {power.circuit-load: {share: 75 %}}\n");
  for (const name of ["parts", "stock.yaml"])
    await cp(join(starterRepository, name), join(top, name), { recursive: true });
  const banner = oldFormText("builds/over-stage-banner.md");
  await put("builds/banner.md", banner);
  await put("client/builds/x.md", banner.replace("build: over-stage-banner", "build: x"));
  await put(
    "client/house-standard.yaml",
    "house-standard: Client\nrequirements: {power.circuit-load: {share: 40 %}}\n",
  );
});

afterEach(() => rm(top, { recursive: true, force: true }));

async function put(path: string, text: string): Promise<void> {
  await mkdir(join(top, path, ".."), { recursive: true });
  await writeFile(join(top, path), text);
}

const run = (folder: string, ...words: string[]): Promise<Told> => plumbmark(join(top, folder), words);

const record = async (folder: string, ...words: string[]): Promise<InspectionRecord> => {
  const { out, err } = await run(folder, "inspect", "--every", "--as", "json", ...words);
  // Outside git the house standard above that is used is named.
  expect(err.replace(/^plumbmark: The house standard \S+ is used, which stands above \S+\n/u, "")).toBe("");
  return JSON.parse(out) as InspectionRecord;
};

/** 20 A × share. */
const limits = ({ documents }: InspectionRecord): Readonly<Record<string, number | undefined>> =>
  Object.fromEntries(
    documents.map(({ file, checks }) => [
      file,
      checks.find(({ rule }) => rule === "power.circuit-load")?.allowed?.value,
    ]),
  );

describe("the root of a docs repository with house standards deeper in the tree", () => {
  it.each([
    ["", "client/builds/x.md"],
    ["client", "builds/x.md"],
    ["client/builds", "x.md"],
    ["builds", "../client/builds/x.md"],
    ["client", "."],
    ["client/builds", "."],
  ])("is the same from %s, asked for %s", async (folder, path) =>
    expect(limits(await record(folder, path))).toEqual({ "client/builds/x.md": 8 }),
  );

  it("is the same when nothing is asked for", async () => {
    for (const folder of ["", "client", "client/builds"])
      expect(limits(await record(folder))).toEqual({ "builds/banner.md": 15, "client/builds/x.md": 8 });
  });

  it("does not reach beyond the work tree of its version control", async () => {
    await mkdir(join(top, "client/.git"));
    expect(Object.keys(limits(await record("client")))).toContain("builds/x.md");
  });

  it("is where a folder's looser value is refused, with its place", async () => {
    await put(
      "client/house-standard.yaml",
      "house-standard: Client\nrequirements: {power.circuit-load: {share: 90 %}}\n",
    );
    const { status, err } = await run("client", "inspect");
    expect(status).toBe(2);
    expect(err).toContain("client/house-standard.yaml:2:37: ");
  });
});

describe("editions", () => {
  const edition = (share: string, rest = ""): string =>
    `house-standard: House\n${rest}requirements: {power.circuit-load: {share: ${share}}}\n`;
  beforeEach(async () => {
    await rm(join(top, "client"), { recursive: true });
    await put(
      "house-standard.yaml",
      edition("30 %", "edition: 2027\nin-force: 2027-01-01\nreplaces: editions/2026.yaml\n"),
    );
    await put("editions/2026.yaml", edition("75 %", "edition: 2026\n"));
  });

  it("that are not in force yet leave the one they replace in force", async () => {
    const found = await record("");
    expect(found.standard).toBe("House, 2026 edition");
    expect(limits(found)).toEqual({ "builds/banner.md": 15 });
  });

  it("that replace one another are trouble", async () => {
    await put("editions/2026.yaml", edition("75 %", "in-force: 2028-01-01\nreplaces: ../house-standard.yaml\n"));
    const { status, err } = await run("", "inspect");
    expect(status).toBe(2);
    expect(err).toMatch(/leads back to it/u);
  });

  // 6 × 133 W ÷ 0.95 + 60 W is 900 VA or 7.5 A at 120 V: under 15 A, over 20 A × 30 % = 6 A.
  it("compared, tell which documents change verdict and by which check", async () => {
    await put("new.yaml", edition("30 %", "edition: 2027\n"));
    // Ready by the edition it was approved under: with its letter, and alone.
    await cp(join(starterRepository, "letters"), join(top, "letters"), { recursive: true });
    const banner = await readFile(join(top, "builds/banner.md"), "utf8");
    await put("builds/banner.md", banner.replace(/\[([^\]]*)\]\([a-z-]+\.md\)/gu, "$1"));
    await cp(join(top, "editions/2026.yaml"), join(top, "house-standard.yaml"));
    approveCopy(top);
    const words = ["inspect", "--standard", "new.yaml", "--against", "editions/2026.yaml"];
    const { status, out } = await run("", ...words);
    expect(status).toBe(1);
    expect(out).toMatch(
      /builds\/banner\.md {3}not ready, was ready\n {2}stands against it now\n(?: {4}SHALL +document\.sign-off.*\n)?(?: {6}.*\n)* {4}SHALL +power\.circuit-load/u,
    );
    expect(out).toContain("1 no longer ready");
    const compared = JSON.parse((await run("", ...words, "--as", "json")).out) as InspectionRecord;
    expect(compared.against).toEqual({
      standard: "House, 2026 edition",
      documents: [{ file: "builds/banner.md", was: "ready", is: "not ready" }],
    });
    const ajv = new Ajv2020({ strict: false });
    expect(ajv.validate(schemas.recordSchema, compared), JSON.stringify(ajv.errors)).toBe(true);
  });
});

describe("rules", () => {
  it("tells what is in force where it is asked, and where each value comes from", async () => {
    const rule = async (folder: string) => (await run(folder, "rules", "power.circuit-load")).out;
    expect(await rule("")).toContain("share 75 % (house-standard.yaml, line 2)");
    expect(await rule("client/builds")).toContain("share 40 % (client/house-standard.yaml, line 2)");
    expect((await run("", "rules", "power.voltage-drop")).out).toContain("branch 3 % (practice us)");
    expect((await run("", "rules", "panels.spares")).out).toContain("least 1 (default)");
  });

  it("lists every rule as text, as data and as Markdown", async () => {
    const [text, data, markdown] = await Promise.all(
      ["text", "json", "markdown"].map(async (form) => (await run("client", "rules", "--as", form)).out),
    );
    const { standards, "in-force": all } = JSON.parse(data as string);
    expect(standards.map(({ file }: { file: string }) => file)).toEqual([
      "house-standard.yaml",
      "client/house-standard.yaml",
    ]);
    for (const { id } of notEmpty(all)) for (const form of [text, markdown]) expect(form).toContain(id);
    const share = all.find(({ id }: { id: string }) => id === "power.circuit-load").settings.share;
    expect(share).toMatchObject({ value: 0.4, from: { file: "client/house-standard.yaml", line: 2, column: 37 } });
    for (const line of (text as string).split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
  });

  it("goes by the defaults where there is no house standard", async () => {
    await rm(join(top, "house-standard.yaml"));
    expect((await run("", "rules", "power.circuit-load")).out).toContain("share 80 % (practice us)");
  });
});
