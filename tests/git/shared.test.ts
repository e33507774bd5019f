import { cpSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { Repository, scratch } from "./scratch.js";

const CASE = fileURLToPath(new URL("../../rules/power/shared-circuits/cases/holds-a-week-apart", import.meta.url));
const RULE = "power.shared-circuits";

/** Two builds of one venue and circuit, a week apart, committed. */
function weekApart(): Repository {
  const folder = scratch();
  cpSync(CASE, folder, { recursive: true });
  const repository = new Repository(folder);
  repository.write("house-standard.yaml", "house-standard: House\n");
  repository.git("init", "--quiet", "--initial-branch", "main");
  repository.commit();
  return repository;
}

const failing = async (repository: Repository, ...words: readonly string[]): Promise<readonly string[]> => {
  const { out: stdout } = await repository.plumbmark("inspect", ...words, "--as", "json");
  const record = JSON.parse(stdout) as {
    readonly documents: readonly {
      readonly file: string;
      readonly checks: readonly { rule: string; outcome: string }[];
    }[];
  };
  return record.documents
    .filter(({ checks }) => checks.some(({ rule, outcome }) => rule === RULE && outcome === "fails"))
    .map(({ file }) => file);
};

test("who moves a build to the evening of another is told of both, the second time as the first", async () => {
  const repository = weekApart();
  expect(await failing(repository)).toEqual([]);
  repository.change("builds/pier.md", "2027-05-10 to 2027-05-12", "2027-05-05");
  repository.git("add", "--all");
  const both = ["builds/hall.md", "builds/pier.md"];
  expect(await failing(repository, "--staged")).toEqual(both);
  expect(await failing(repository, "--staged")).toEqual(both);
  repository.commit();
  expect(await failing(repository, "--since", "HEAD~1")).toEqual(both);
  expect(await failing(repository, "builds/hall.md")).toEqual(["builds/hall.md"]);
});
