import { rules } from "@plumbmark/rules";
import { describe, expect, it } from "vitest";
import { ownPagesOf, pageOf } from "./page-of.js";
import { starterFiles, TODAY } from "./starter-files.js";

const build = (name: string, days: string, face: string, status = "for-build") => ({
  path: `builds/${name}.md`,
  text: `---\nbuild: ${name}\ntitle: ${name}\nrevision: 1\nstatus: ${status}\n${days}faces:\n  wall: {panel: tile-500-p3.1, ${face}}\n---\n\n# ${name}\n`,
});
const stock = {
  path: "stock.yaml",
  text: `lots:\n  lot-a: {panel: tile-500-p3.1, batch: "26-01", count: 20}\n  lot-b: {panel: tile-500-p3.1, count: 8}\n  lot-c: {panel: tile-500-p3.1, count: 4}\n`,
};
// Counted by hand. Lot a: 8 + 1 from the 1st to the 4th, 6 + 2 from the 4th to the 6th: 17 on the 4th, 3 are left.
// The draft is not counted. Lot b: 8 of one build on a day, 4 + 1 of another on it: 13, 5 short. Lot x is on no list.
const documents = [
  build("one", "on-site: 2027-03-01 to 2027-03-04\n", "columns: 4, rows: 2, spares: 1, lot: lot-a"),
  build("two", "on-site: 2027-03-04 to 2027-03-06\n", "columns: 3, rows: 2, spares: 2, lot: lot-a"),
  build("three", "on-site: 2027-03-05\n", "columns: 5, rows: 2, spares: 0, lot: lot-a", "draft"),
  build("four", "on-site: from 2027-05-01\n", "columns: 4, rows: 2, spares: 0, lot: lot-b"),
  build("five", "on-site: 2027-06-01\n", "columns: 4, rows: 1, spares: 1, lot: lot-b"),
  build("six", "", "columns: 2, rows: 1, spares: 0, lot: lot-x"),
];
const pages = ownPagesOf({ files: { ...starterFiles, stock, documents }, rules, today: TODAY });
const page = pages.get("stock.html") ?? "";

/** The cells of a lot's row as words. */
const row = (lot: string): readonly string[] => {
  const [, html = ""] = new RegExp(`<tr id="Lot-${lot}">(.*?)</tr>`, "u").exec(page) ?? [];
  return html.split(/<\/t[hd]>/u).map((cell) => cell.replace(/<\/li>/gu, "; ").replace(/<[^>]*>/gu, ""));
};

describe("the page of the stock", () => {
  it("tells each lot, its batch, its busiest day and what is left then", () =>
    expect(row("lot-a").slice(0, 7)).toEqual(["lot-a", "tile-500-p3.1", "26-01", "20", "2027-03-04", "17", "3"]));

  it("tells who takes from it on which days, and leaves a draft out of the sum", () => {
    const [, , , , , , , takers] = row("lot-a");
    expect(takers).toContain("one, face wall: 9 panels, 2027-03-01 to 2027-03-04");
    expect(takers).toContain("two, face wall: 8 panels, 2027-03-04 to 2027-03-06");
    expect(takers).toContain("three, face wall: 10 panels, 2027-03-05; a draft, not counted");
  });

  it("says how many are short", () =>
    expect(row("lot-b").slice(2, 7)).toEqual(["not stated", "8", "2027-06-01", "13", "5 short"]));

  it("says of a lot nobody takes from that all of it is there", () =>
    expect(row("lot-c").slice(3)).toEqual(["4", "none", "0", "4", "nobody", ""]));

  it("takes nothing that is not written down for nought", () =>
    expect(row("lot-x").slice(1)).toEqual([
      "not in the stock list",
      "not stated",
      "not stated",
      "none",
      "0",
      "cannot be told",
      "six, face wall: 2 panels, days not stated; not counted; ",
      "",
    ]));

  it("is where the panels of a sheet lead to", () => {
    expect(pages.get("builds/one.html")).toContain(
      `Panels and spares of face wall are from lot: <a href="../stock.html#Lot-lot-a">lot-a</a>, batch 26-01.`,
    );
    expect(pages.get("builds/four.html")).toContain(`#Lot-lot-b">lot-b</a>, batch not stated.`);
    expect(pages.get("builds/six.html")).toContain(`#Lot-lot-x">lot-x</a>, which is not in the stock list.`);
  });

  it("says so where there is no stock list", () => {
    const { stock: _, ...files } = starterFiles;
    const bare = pageOf({ files: { ...files, documents: [] }, rules, today: TODAY }, "stock.html");
    expect(bare).toContain("There is no stock list, and no build names a lot.");
  });
});

describe("items and days", () => {
  const text = (name: string, days: string, more: string) => ({
    path: `builds/${name}.md`,
    text: `---\nbuild: ${name}\ntitle: ${name}\nrevision: 1\nstatus: for-build\n${days}${more}---\n\n# ${name}\n`,
  });
  const owned = {
    path: "stock.yaml",
    text: "items:\n  breaker-lock: {count: 5, inspected: 2026-09-01}\n  cat6-solid: {lengths: {60 ft: 2, 70 ft: 1}}\n  processor-4: {serials: {P4-1: {inspected: 2026-08-01}, P4-2: {fault: port 2}}}\ndays: {out: 1, back: 2}\n",
  };
  // By hand: three locks from the 1st to the 4th, back on the 6th; four from the 7th on, loaded on the 6th: 7 on the 6th.
  const both = ownPagesOf({
    files: {
      ...starterFiles,
      stock: owned,
      documents: [
        text(
          "one",
          "on-site: 2027-03-02 to 2027-03-04\n",
          "also-bring: {breaker-lock: 3, cat6-solid: {count: 1, length: 60 ft}}\n",
        ),
        text("two", "on-site: 2027-03-07\n", "also-bring: {breaker-lock: 4}\n"),
        text("three", "", "also-bring: {breaker-lock: 4}\n"),
      ],
    },
    rules,
    today: TODAY,
  });
  const cells = (id: string): readonly string[] => {
    const [, html = ""] = new RegExp(`<tr id="Item-${id}">(.*?)</tr>`, "u").exec(both.get("stock.html") ?? "") ?? [];
    return html.split(/<\/t[hd]>/u).map((cell) => cell.replace(/<\/li>/gu, "; ").replace(/<[^>]*>/gu, ""));
  };

  it("tells of an item how many there are, the busiest day with those on the way, and what is short", () =>
    expect(cells("breaker-lock")).toEqual([
      "breaker-lock",
      "any",
      "5",
      "2026-09-01",
      "2027-03-06",
      "7",
      "2 short",
      "one: 3, 2027-03-01 to 2027-03-06; two: 4, 2027-03-06 to 2027-03-09; ",
      "",
    ]));

  it("lists lengths one by one, and leaves out what is faulty", () => {
    expect(cells("cat6-solid_20_60_20_ft").slice(1, 7)).toEqual(["60 ft", "2", "not stated", "2027-03-01", "1", "1"]);
    expect(cells("cat6-solid_20_70_20_ft").slice(1, 7)).toEqual(["70 ft", "1", "not stated", "none", "0", "1"]);
    expect(cells("processor-4").slice(1, 4)).toEqual(["any", "1 out of use: P4-2: port 2", "2026-08-01"]);
  });

  it("the register says which builds stand on which days", () => {
    const [, html = ""] = /<h2 id="By-day">(.*?)<\/section>/su.exec(both.get("index.html") ?? "") ?? [];
    const rows = [...html.matchAll(/<tr>(.*?)<\/tr>/gsu)].map(([, row = ""]) =>
      row
        .replace(/<\/t[hd]>/gu, " | ")
        .replace(/<[^>]*>/gu, "")
        .trim(),
    );
    expect(rows.slice(1).map((row) => row.replace(/, no venue stated.*/u, ""))).toEqual([
      "2027-03-02 to 2027-03-04 | one",
      "2027-03-07 | two",
    ]);
    expect(both.get("index.html")).toContain("Without days on site: ");
  });
});
