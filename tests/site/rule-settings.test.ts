import { rules } from "@plumbmark/rules";
import { expect, it } from "vitest";
import { pageOf } from "./page-of.js";
import { starterFiles, TODAY } from "./starter-files.js";

const files = {
  ...starterFiles,
  documents: [],
  houseStandard: {
    path: "house-standard.yaml",
    text: "house-standard: House\nrequirements:\n  panels.spares: {level: shall, flown: {least: 2}}\n",
  },
  folderStandards: [
    {
      path: "builds/tours/house-standard.yaml",
      folder: "builds/tours",
      text: "house-standard: Tours\nrequirements:\n  power.circuit-load: {share: 60 %}\n",
    },
  ],
};

/** The cells of a table of the page, row by row. */
const rowsOf = (id: string): readonly string[] =>
  [
    ...(
      /<caption>Set by house standards<\/caption>.*?<\/table>/su.exec(
        pageOf({ files, rules, today: TODAY }, `rules/${id}.html`) ?? "",
      )?.[0] ?? ""
    ).matchAll(/<tr>(.*?)<\/tr>/gsu),
  ].map(([, row]) =>
    String(row)
      .replace(/<[^>]+>/gu, "|")
      .replace(/\|+/gu, "|"),
  );

it("a rule's page shows what the house standards of folders and for faces held one way set", () => {
  expect(rowsOf("power.circuit-load").slice(1)).toEqual([
    "|builds/tours|share|60 %|builds/tours/house-standard.yaml, line 3|",
  ]);
  expect(rowsOf("panels.spares").slice(1)).toEqual([
    "|everywhere|level|SHALL|house-standard.yaml, line 3|",
    "|everywhere|least, flown|2|house-standard.yaml, line 3|",
  ]);
  expect(rowsOf("power.voltage-drop")).toEqual([]);
});
