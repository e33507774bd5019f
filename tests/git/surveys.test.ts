import { expect, test } from "vitest";
import { ferry } from "../venues/hall.js";
import { Repository, scratch } from "./scratch.js";

const BUILD = "builds/quay-banner.md";
const HALL = "venues/ferry-hall.md";

/** The hall with a build in it, and one that stands elsewhere; committed. */
function hall(): Repository {
  const repository = new Repository(scratch());
  const { documents, parts, surveys = [] } = ferry();
  for (const { path, text } of [...documents, ...parts, ...surveys]) repository.write(path, text);
  repository.write("builds/other.md", "---\nbuild: other\ntitle: Other\nstatus: draft\nvenue: Elsewhere\n---\n");
  repository.write("house-standard.yaml", "house-standard: Ferry\n");
  repository.write("venues/README.md", "# How halls are surveyed\n");
  repository.write("letters/fh-7.pdf", "A letter.\n");
  repository.git("init", "--quiet", "--initial-branch=main");
  repository.commit("The beginning");
  return repository;
}

const text = async (repository: Repository, ...words: string[]): Promise<string> =>
  (await repository.plumbmark("inspect", "--every", ...words)).out;

test("a survey on the disk completes the builds that name it", async () => {
  const out = await text(hall(), BUILD);
  expect(out).toContain("What is written of the venue agrees with the survey ferry-hall.");
  // 4 × 100 W ÷ 0.95 = 421.1 VA at the 120 V of the survey: 3.509 A.
  expect(out).toContain("3.509 A");
});

test("what is kept is looked at again when the survey changes", async () => {
  const repository = hall();
  const before = (await repository.plumbmark("inspect", BUILD)).out;
  repository.change(BUILD, "{stage-5: {serves", "{stage-5: {breaker: 30 A, serves");
  repository.change(HALL, "leg: B, breaker: 15 A", "leg: B, breaker: 30 A");
  expect((await repository.plumbmark("inspect", BUILD)).out).not.toContain("venue.agrees");
  repository.change(HALL, "leg: B, breaker: 30 A", "leg: B, breaker: 15 A");
  const after = (await repository.plumbmark("inspect", BUILD)).out;
  expect(before).not.toContain("venue.agrees");
  expect(after).toContain("venue.agrees");
  expect(after.replace(/\s+/gu, " ")).toContain(
    "`power.circuits.stage-5.breaker` is `30 A` in builds/quay-banner.md, and the survey of 2026-10-02 by R. Tallow says `15 A` (venues/ferry-hall.md, line 19, `circuits.stage-5.breaker`).",
  );
});

test("a staged survey concerns the builds that name it, and no other", async () => {
  const repository = hall();
  repository.change(HALL, "supply: 120 V, breaker: 20 A", "supply: 120 V, breaker: 1 A");
  repository.git("add", HALL);
  expect(Object.keys(await repository.verdicts("--staged"))).toEqual([BUILD]);
  repository.git("commit", "--quiet", "--no-verify", "--message", "Another breaker");
  expect(Object.keys(await repository.verdicts("--since", "HEAD~1"))).toEqual([BUILD]);
});

test("a mistake in a survey stands against the survey, with line and column", async () => {
  const repository = hall();
  repository.change(HALL, "measured-from:", "measured-form:");
  const { status, out } = await repository.plumbmark("inspect", "--as", "gnu");
  expect(status).toBe(1);
  expect(out).toContain("venues/ferry-hall.md:8:1: shall document.front-matter fails: The key `measured-form` is not");
  expect((await repository.plumbmark("inspect")).out).toContain("Write `measured-from`.");
});

test("a survey that no pattern finds is told", async () => {
  const repository = hall();
  repository.write("halls/pier.md", "---\nsurvey: pier\ntitle: Pier\n---\n");
  expect((await repository.plumbmark("inspect")).out).toContain("This is a survey of a venue, and no pattern");
  repository.write("house-standard.yaml", 'house-standard: Ferry\nsurveys: ["venues/**/*.md", "halls/*.md"]\n');
  expect((await repository.plumbmark("inspect")).out).not.toContain("This is a survey of a venue");
});

test("a venue is a survey without a house standard, too, and no build document", async () => {
  const repository = hall();
  repository.remove("house-standard.yaml");
  const verdicts = await repository.verdicts();
  expect(Object.keys(verdicts).sort()).toEqual(expect.arrayContaining([BUILD, "builds/other.md"]));
  expect(verdicts[HALL]).toBeUndefined();
});
