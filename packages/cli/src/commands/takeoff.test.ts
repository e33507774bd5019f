import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import stringWidth from "string-width";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { plumbmark, type Told } from "../../../../tests/plumbmark.js";
import { copyStarter } from "../../../../tests/starter.js";

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "plumbmark-"));
  copyStarter(folder);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

const run = (...words: string[]): Promise<Told> => plumbmark(folder, ["takeoff", ...words]);

const BANNER = "builds/over-stage-banner.md";

describe("takeoff", () => {
  it("prints parts and cables as text when no schedule is named", async () => {
    const { status, out, err } = await run(BANNER);
    expect([status, err]).toEqual([0, ""]);
    expect(out).toMatch(/^Parts\n/u);
    expect(out).toMatch(/^Cables$/mu);
    expect(out).toMatch(/^P1-F +circuit/mu);
  });

  it("prints one table as CSV, with lines that end in CRLF", async () => {
    const { status, out } = await run(BANNER, "cables", "--as", "csv");
    expect(status).toBe(0);
    expect(out.split("\r\n")[0]).toBe(
      "Label,From,To,As written,Part,From connector,To connector,Kind,Made of,Length (ft),Reach (ft),sure,Verdict",
    );
    expect(out.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/u);
    expect(out.endsWith("\r\n")).toBe(true);
  });

  it("takes the parts when CSV is asked for without a schedule", async () => {
    expect((await run(BANNER, "--as", "csv")).out).toMatch(/^Part,In all,/u);
  });

  it("prints Markdown tables below headings", async () => {
    const { out } = await run(BANNER, "circuits", "--as", "markdown");
    expect(out).toMatch(/^## Circuits\n\n\| Circuit \|.*\n\| --- \|.*\n\| stage-4 \| 120 V \|/u);
  });

  it.each(["parts", "panels", "circuits", "hangs"])("keeps the lines of %s within the width", async (name) => {
    const { out } = await run(BANNER, name);
    for (const line of out.split("\n")) expect(stringWidth(line)).toBeLessThanOrEqual(100);
  });

  it("uses the units of the document", async () => {
    expect((await run("builds/harbour-header.md", "hangs", "--as", "csv")).out).toMatch(
      /From the left \(m\).*Load, level \(kg\)/u,
    );
    expect((await run(BANNER, "hangs", "--as", "csv")).out).toMatch(/From the left \(ft\).*Load, level \(lb\)/u);
  });

  it("says that a schedule is empty", async () => {
    const { status, out } = await run("builds/riser-fascias.md", "hangs");
    expect(status).toBe(0);
    expect(out).toMatch(/Nothing is written down for it/u);
  });

  it("warns with status 1 when the document has mistakes: something may be left out", async () => {
    const text = await readFile(join(folder, BANNER), "utf8");
    await writeFile(join(folder, "builds/slip.md"), text.replace("banner A1..A6", "baner A1..A6"));
    const { status, out, err } = await run("builds/slip.md", "cables");
    expect(status).toBe(1);
    expect(out).toMatch(/P1-F/u);
    expect(err).toMatch(/may not be everything/u);
    expect(err).toMatch(/plumbmark inspect builds\/slip\.md/u);
    await rm(join(folder, "builds/slip.md"));
  });

  it.each([
    [[BANNER, "cabels"], /no schedule `cabels`[\s\S]*Did you mean `cables`/u],
    [["builds"], /is a folder/u],
    [["stock.yaml"], /is not a build document/u],
    [["nowhere.md"], /no file or folder/u],
    [[BANNER, "--as", "json"], /text, markdown, csv/u],
    [[], /file/u],
  ])("%j cannot be carried out and says why", async (words, says) => {
    const { status, out, err } = await run(...words);
    expect(status).toBe(2);
    expect(out).toBe("");
    expect(err).toMatch(says);
  });

  it("is explained by help", async () => {
    const { status, out } = await run("--help");
    expect(status).toBe(0);
    expect(out).toMatch(/RFC 4180/u);
    expect(out).toMatch(/apostrophe/u);
  });
});
