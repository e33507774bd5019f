import { createHash } from "node:crypto";
import { changesBetween, openRepository, type RepositoryFiles, withApproval } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codeOf, codeRead } from "../../packages/core/src/approval/code.js";
import { approvalCodes } from "../approval-codes.js";
import { changed, inspectText, SMALL, starter, TODAY } from "../documents/repository.js";

const files = (text: string, given: Partial<RepositoryFiles> = {}): RepositoryFiles => ({
  ...starter(),
  documents: [{ path: "builds/a.md", text }],
  ...given,
});

/** The code of what a text is, among the starter's parts and stock. */
const code = (text: string, given: Partial<RepositoryFiles> = {}): string =>
  approvalCodes(files(text, given), TODAY).get("builds/a.md") ?? "none";

const part = (from: string, to: string): Partial<RepositoryFiles> => {
  const parts = starter().parts.map(({ path, text }) => ({ path, text: text.replaceAll(from, to) }));
  expect(parts).not.toEqual(starter().parts);
  return { parts };
};

describe("the code", () => {
  // RFC 4648, 4 and 6, tell base32 by groups of five bits; Crockford's letters are 0-9 and A-Z without I, L, O and U.
  // The digest is that of node:crypto, which is another than the one used (FIPS 180-4, B.1 has `abc`).
  test.each(["abc", "", "Plumbmark", "ünïcode\n"])("of `%s` is forty bits of its SHA-256", (text) => {
    const digest = createHash("sha256").update(text).digest();
    const bits = [...digest.subarray(0, 5)].map((byte) => byte.toString(2).padStart(8, "0")).join("");
    const letters = bits.match(/.{5}/gu)?.map((five) => "0123456789ABCDEFGHJKMNPQRSTVWXYZ"[Number.parseInt(five, 2)]);
    expect(codeOf(text)).toBe(`${letters?.slice(0, 4).join("")}-${letters?.slice(4).join("")}`);
  });

  // FIPS 180-4's example for `abc` begins ba7816bf8f: 10111 01001 11100 00001 01101 01111 11100 01111 are 23, 9, 28, 1, 13, 15, 28, 15.
  test("of `abc` is Q9W1-DFWF, by hand", () => expect(codeOf("abc")).toBe("Q9W1-DFWF"));

  test("is read as it is spoken and written by hand", () => {
    expect(codeRead("7k3m 92qf")).toBe("7K3M-92QF");
    expect(codeRead("OIL0-92QF")).toBe("0110-92QF");
  });
});

describe("an approval is of a content", () => {
  const now = code(SMALL);

  test.each([
    [
      "the approval itself",
      changed("by: M. Finch, on: 2026-11-20, code: 0000-0000", "by: R. Gale, on: 2026-01-02, code: 1111-1111"),
    ],
    ["the approval taken out", changed("approved: {by: M. Finch, on: 2026-11-20, code: 0000-0000}\n", "")],
    [
      "the approval written over several lines",
      changed(
        "approved: {by: M. Finch, on: 2026-11-20, code: 0000-0000}",
        "approved:\n  by: M. Finch\n  on: 2026-11-20\n  code: 0000-0000",
      ),
    ],
    ["ends of lines", SMALL.replaceAll("\n", "\r\n")],
    ["a byte order mark", `\uFEFF${SMALL}`],
    ["a ticked task", changed("- [ ] Accepted", "- [x] Accepted")],
    ["the step to as-built", changed("status: for-build", "status: as-built")],
  ])("which is the same but for %s", (_, text) => {
    expect(text).not.toBe(SMALL);
    expect(code(text)).toBe(now);
  });

  test.each([
    ["a figure", changed("breaker: 20 A", "breaker: 30 A")],
    ["a comment in the front matter", changed("practice: us", "practice: us # as in the letter")],
    ["a word of the prose", changed("Two people.", "Three people.")],
    ["the text of a task", changed("- [ ] Accepted", "- [ ] Refused")],
    ["a word in brackets that is no task", changed("Four tiles.", "Four [x] tiles.")],
    ["who prepared it", changed("prepared-by: R. Tallow", "prepared-by: J. Ardle")],
    ["a step back to a draft", changed("status: for-build", "status: draft")],
  ])("and is another with %s", (_, text) => expect(code(text)).not.toBe(now));

  test("and is another when a part, a lot or the house standard is", () => {
    expect(code(SMALL, part("mass: 7.9 kg", "mass: 7.8 kg"))).not.toBe(now);
    // A part that is named by a part that is named.
    const stock = starter().stock as { path: string; text: string };
    expect(code(SMALL, { stock: { ...stock, text: stock.text.replace("count: 40", "count: 41") } })).not.toBe(now);
    const houseStandard = starter().houseStandard as { path: string; text: string };
    const standard = (text: string) => code(SMALL, { houseStandard: { ...houseStandard, text } });
    expect(standard(houseStandard.text.replace("share: 75 %", "share: 70 %"))).not.toBe(now);
    expect(standard(houseStandard.text.replace("M. Finch: [approve, waive]", "M. Finch: [approve]"))).toBe(now);
  });

  test("and stays the same when a part or lot is changed that it does not name", () => {
    const stock = starter().stock as { path: string; text: string };
    expect(code(SMALL, { stock: { ...stock, text: stock.text.replace("count: 24", "count: 25") } })).toBe(now);
    expect(
      code(SMALL, { parts: [...starter().parts, { path: "parts/more.yaml", text: "more: {kind: bar, mass: 1 kg}" }] }),
    ).toBe(now);
  });
});

const signOff = (text: string) =>
  openRepository(files(text), rules, { today: TODAY })
    .one("builds/a.md")
    .entry.checks.filter(({ rule }) => rule === "document.sign-off");

describe("what is approved", () => {
  const approved = withApproval(SMALL, { by: "M. Finch", on: "2026-11-24", code: code(SMALL) }) ?? "";

  test("is ready", () => {
    const { entry: document } = openRepository(files(approved), rules, { today: TODAY }).one("builds/a.md");
    expect(document.verdict).toBe("ready");
    expect(document.approval).toEqual({
      state: "approved",
      code: code(SMALL),
      by: "M. Finch",
      on: "2026-11-24",
      given: code(SMALL),
    });
  });

  test("and changed since is not, and says both codes", () => {
    const text = approved.replace("breaker: 20 A", "breaker: 25 A");
    const [found, ...others] = signOff(text) ?? [];
    expect(others).toEqual([]);
    expect(found).toMatchObject({ outcome: "fails", at: { path: "approved.code" } });
    expect(found?.says).toContain(code(SMALL));
    expect(found?.says).toContain(code(text));
  });

  test("by `approved-by` alone is open, and says the code there is to approve", () => {
    const text = changed("approved: {by: M. Finch, on: 2026-11-20, code: 0000-0000}", "approved-by: M. Finch");
    expect(signOff(text)).toMatchObject([{ outcome: "open", at: { path: "approved-by" } }]);
    expect(signOff(text)?.[0]?.mend).toContain(code(text));
  });

  test("tells what was changed since, where both are at hand", () => {
    const build = (text: string, given: Partial<RepositoryFiles> = {}) =>
      openRepository(files(text, given), rules, { today: TODAY }).one("builds/a.md").build;
    const changes = (text: string, given: Partial<RepositoryFiles> = {}) =>
      changesBetween(build(SMALL), build(text, given));
    expect(changes(SMALL)).toEqual([]);
    expect(changes(changed("- [ ] Accepted", "- [x] Accepted"))).toEqual([]);
    expect(changes(changed("breaker: 20 A", "breaker: 25 A"))).toEqual([
      "`power.circuits.c1.breaker` was `20 A` and is `25 A`",
    ]);
    expect(changes(changed("Two people.", "Three people."))).toEqual(["the section “Lift plan” reads otherwise"]);
    expect(changes(SMALL, part("mass: 7.9 kg", "mass: 7.8 kg"))).toEqual([
      "part tile-500-p3.1: `mass` was `7.9 kg` and is `7.8 kg`",
    ]);
    expect(changes(changed("practice: us", "practice: us # new"))).toEqual([
      "the text reads otherwise, in a comment, a blank or above the first heading",
    ]);
  });
});

describe("writing an approval", () => {
  const said = { by: "M. Finch", on: "2026-11-24", code: "7K3M-92QF" };
  const line = "approved: {by: M. Finch, on: 2026-11-24, code: 7K3M-92QF}";

  test.each([
    [
      "below who prepared it",
      "build: a\nprepared-by: R. Tallow # him\n\nfaces: {}",
      `build: a\nprepared-by: R. Tallow # him\n${line}\n\nfaces: {}`,
    ],
    [
      "with the ends of lines there are",
      "build: a\r\nprepared-by: R. Tallow\r\nfaces: {}",
      `build: a\r\nprepared-by: R. Tallow\r\n${line}\r\nfaces: {}`,
    ],
    [
      "below the status, where nobody is named",
      "build: a\nstatus: for-build\nfaces:\n  x: {}",
      `build: a\nstatus: for-build\n${line}\nfaces:\n  x: {}`,
    ],
    [
      "in braces",
      "{build: a, prepared-by: R. Tallow, faces: {}}",
      `{build: a, prepared-by: R. Tallow, ${line}, faces: {}}`,
    ],
    [
      "over one there is, key by key",
      "build: a\napproved: # by phone\n  code: 1111-1111 # read out\n  by: X. Y\n  on: 2025-01-01\nfaces: {}",
      "build: a\napproved: # by phone\n  code: 7K3M-92QF # read out\n  by: M. Finch\n  on: 2026-11-24\nfaces: {}",
    ],
    ["over one that lacks its code", "build: a\napproved: {by: X. Y}\nfaces: {}", `build: a\n${line}\nfaces: {}`],
    [
      "over one of two lines that lacks its code",
      "build: a\napproved:\n  by: X. Y\nfaces: {}",
      `build: a\n${line}\nfaces: {}`,
    ],
    ["over one that is no group of keys", "build: a\napproved: yes\nfaces: {}", `build: a\n${line}\nfaces: {}`],
  ])("puts it %s", (_, yaml, expected) => {
    const around = (inner: string): string => `---\n${inner}\n---\n\n# A\n`;
    expect(withApproval(around(yaml), said)).toBe(around(expected));
  });

  test("quotes a name that YAML would read otherwise", () => {
    const text = withApproval("---\nbuild: a\n---\n", { ...said, by: "Finch: M. #2" });
    expect(text).toContain('{by: "Finch: M. #2", on:');
  });

  test("changes no content, wherever it is put", () => {
    const pieces = fc.constantFrom(
      "build: a",
      "status: for-build",
      "# note",
      "",
      "practice: us",
      "title: |\n  two\n  lines",
      "faces:\n  x: {columns: 1}",
      "prepared-by: R. Tallow",
      'venue: "a, b"',
    );
    let tried = 0;
    fc.assert(
      fc.property(
        fc.uniqueArray(pieces, { minLength: 1 }),
        fc.constantFrom("\n", "\r\n"),
        fc.boolean(),
        (lines, end, bom) => {
          const text = `${bom ? "\uFEFF" : ""}${["---", ...lines.join("\n").split("\n"), "---", "", "- [ ] x", ""].join(end)}`;
          const written = withApproval(text, said);
          if (written === undefined) return;
          tried += 1;
          const [before, after] = [code(text), code(written)];
          expect(after).toBe(before);
          expect(code(withApproval(written, { ...said, by: "R. Gale" }) ?? "")).toBe(before);
        },
      ),
      { numRuns: 60 },
    );
    expect(tried).toBeGreaterThan(30);
  });

  test("refuses what has no front matter, or one that cannot be read", () => {
    expect(withApproval("# A\n", said)).toBeUndefined();
    expect(withApproval("---\nbuild: [\n---\n", said)).toBeUndefined();
  });
});

describe("the verdict of a draft", () => {
  test("is `draft`, never `ready`, also where everything holds", () => {
    const text = changed("status: for-build", "status: draft");
    const { verdict, counts, approval } = inspectText(text);
    expect([verdict, counts.fails, approval]).toEqual(["draft", 0, undefined]);
  });

  test("is `not ready` while a requirement fails", () =>
    expect(inspectText(changed("breaker: 20 A", "breaker: 1 A", changed("for-build", "draft"))).verdict).toBe(
      "not ready",
    ));
});
