import { mendRepository, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { starter, TODAY } from "../documents/repository.js";

const BANNER = "builds/over-stage-banner.md";

/** What a person types to make the starter's banner two panels wider: the face, its run and chain, the bar, its last hang. */
const BY_HAND = [
  ["    columns: 6", "    columns: 8"],
  ["panels: banner A1..A6\n\ndata", "panels: banner A1..A8\n\ndata"],
  ["panels: banner A1..A6\n\npicture", "panels: banner A1..A8\n\npicture"],
  ["length: 10 ft 6 in", "length: 13 ft 9 in"],
  ["H4: {at: 9 ft 6 in", "H4: {at: 12 ft 9 in"],
] as const;

function wider() {
  const files = starter();
  const was = files.documents.find(({ path }) => path === BANNER)?.text ?? "";
  const text = BY_HAND.reduce((made, [from, to]) => {
    expect(made.split(from)).toHaveLength(2);
    return made.replace(from, to);
  }, was);
  const repository = openRepository(files, rules, { today: TODAY });
  repository.replace(BANNER, text);
  return repository;
}

test("two panels wider: five edits by hand and one mend, and all that is left is the approval", () => {
  const repository = wider();
  expect(repository.one(BANNER).entry.checks.length).toBeGreaterThan(4);
  const { files } = mendRepository(repository, (path) => path === BANNER);
  expect(files.map(({ path }) => path)).toEqual([BANNER]);
  expect(repository.one(BANNER).entry.checks.map(({ rule }) => rule)).toEqual(["document.sign-off"]);
  const code = repository.model(BANNER).build.approval.code ?? "";
  const mended = repository.files.documents.find(({ path }) => path === BANNER)?.text ?? "";
  repository.replace(BANNER, mended.replace(/(^approved: \{.*code: )[0-9A-Z-]+/mu, `$1${code}`));
  expect(repository.one(BANNER).entry.verdict).toBe("ready");
});

// Arithmetic by hand from the catalogue's figures; 1 lb = 0.45359237 kg (exact, NIST Handbook 44, appendix C).
test("the figures in its prose are those of eight panels, each to the precision it was written to", () => {
  const repository = wider();
  mendRepository(repository, (path) => path === BANNER);
  const text = repository.files.documents.find(({ path }) => path === BANNER)?.text ?? "";
  const quoted = (of: string): string | undefined =>
    new RegExp(`\\[([^\\]]*)\\]\\(calc:${of.replaceAll(".", "\\.")}\\)`, "u").exec(text)?.[1];
  const panel = repository.model(BANNER).build.faces[0]?.panel?.name ?? "";
  const parts = repository.catalogue.parts;
  const figure = (part: string, path: string): number => parts.get(part)?.quantities.get(path)?.value ?? Number.NaN;
  const kg = 8 * (figure(panel, "mass") + figure("hanging-bar-500", "mass"));
  expect(quoted("faces.banner.mass")).toBe(`${(kg / 0.45359237).toFixed(0)} lb`);
  expect(quoted("faces.banner.panel-count")).toBe("8");
  const [wide = Number.NaN] = [figure(panel, "pixels.1")];
  expect(quoted("faces.banner.pixels-wide")).toBe(`${8 * wide} px`);
  const amps = (8 * figure(panel, "power.maximum")) / figure(panel, "power.factor") / 120;
  expect(quoted("power.circuits.stage-4.current")).toBe(`${amps.toFixed(1)} A`);
});
