import { openStandards, outdated, type RepositoryFiles } from "@plumbmark/core";
import { expect, test } from "vitest";

const files = (text: string, folder?: string): RepositoryFiles => ({
  houseStandard: { path: "house-standard.yaml", text: `house-standard: House\n${text}\n` },
  ...(folder === undefined
    ? {}
    : {
        folderStandards: [
          { folder: "quay", path: "quay/house-standard.yaml", text: `house-standard: Quay\n${folder}` },
        ],
      }),
  parts: [],
  documents: [],
});

const share = "{power.circuit-load: {share: 60 %}}";

test("`rules` and `plugins` are read as `requirements` and `rules-from`", () => {
  const { root } = openStandards(files(`rules: ${share}\nplugins: [./a.mjs]`));
  expect(root.settings.requirements).toEqual({ "power.circuit-load": { share: "60 %" } });
  expect(root.settings["rules-from"]).toEqual(["./a.mjs"]);
  expect(Object.keys(root.settings)).not.toContain("rules");
});

test("an old name is told with its file and place, and with the name it has now", () => {
  const told = outdated(openStandards(files(`plugins: [./a.mjs]`, `rules: ${share}`)));
  expect(told.map(({ file, place, says, mend }) => `${file}:${place.line}:${place.column}: ${says} ${mend}`)).toEqual([
    "house-standard.yaml:2:1: `plugins` is now called `rules-from`. Write `rules-from`: the old name is read in this version, and no longer in the next.",
    "quay/house-standard.yaml:2:1: `rules` is now called `requirements`. Write `requirements`: the old name is read in this version, and no longer in the next.",
  ]);
  expect(outdated(openStandards(files(`requirements: ${share}`)))).toEqual([]);
});

test.each([
  [`rules: ${share}\nrequirements: ${share}`, "rules", "requirements"],
  ["plugins: [./a.mjs]\nrules-from: [./a.mjs]", "plugins", "rules-from"],
])("old and new name at once are refused: %s", (text, old, now) => {
  expect(() => openStandards(files(text))).toThrow(
    `house-standard.yaml:2:1: Both \`${old}\` and \`${now}\` are written; the first is the name the second had before.`,
  );
});

test("a mistake under an old name keeps its own place", () =>
  expect(() => openStandards(files("rules: {power.circuit-load: 3}"))).toThrow(/^house-standard\.yaml:2:/u));
