import { publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { expect, it } from "vitest";
import { starterFiles, TODAY } from "./starter-files.js";

/** Of the others no page is made, nor is it drafted what the stock can become. */
const three = rules.filter(({ id }) => ["power.circuit-load", "panels.spares", "power.voltage-drop"].includes(id));
const { stock: _, ...rest } = starterFiles;
const files = {
  ...rest,
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

const pages = publish({ files, rules: three, today: TODAY });

/** The cells of a table of the page, row by row. */
const rowsOf = (id: string): readonly string[] =>
  [
    ...(
      /<caption>Set by house standards<\/caption>.*?<\/table>/su.exec(pages.get(`rules/${id}.html`) ?? "")?.[0] ?? ""
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
  expect(pages.get("rules/power.voltage-drop.html")).toContain("<h1");
  expect(rowsOf("power.voltage-drop")).toEqual([]);
});
