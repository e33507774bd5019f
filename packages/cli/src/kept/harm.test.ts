import { execFileSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeEach, expect, test } from "vitest";
import { Shelf } from "./shelf.js";

// Whatever becomes of the file, a shelf gives what was put there or nothing, and can be used again.

const top = mkdtempSync(join(tmpdir(), "plumbmark-harm-"));
const path = join(top, "entries-0123456789abcdef");
afterAll(() => rmSync(top, { recursive: true, force: true }));

const values = { one: { a: "ä text\nof two lines" }, two: [1, 2, 3], three: "" };

let whole: Buffer;
beforeEach(() => {
  rmSync(path, { recursive: true, force: true });
  const shelf = new Shelf(path, "an edition");
  for (const [key, value] of Object.entries(values)) shelf.set(key, value);
  shelf.save();
  whole = readFileSync(path);
});

const isEmpty = (by = "an edition"): void => {
  for (const key of Object.keys(values)) expect(new Shelf(path, by).get(key)).toBeUndefined();
};

/** Gives how many are there as they were put; what is not is nothing. */
function thereOf(): number {
  const shelf = new Shelf(path, "an edition");
  const found = Object.entries(values).filter(([key, value]) => {
    const given = shelf.get(key);
    if (given !== undefined) expect(given).toEqual(value);
    return given !== undefined;
  });
  return found.length;
}

test("as it was written it is read", () => {
  for (const [key, value] of Object.entries(values)) expect(new Shelf(path, "an edition").get(key)).toEqual(value);
});

test("cut short at any length it gives whole values or nothing, and what is added then is there", () => {
  for (let length = 0; length < whole.length; length += 1) {
    writeFileSync(path, whole.subarray(0, length));
    expect(thereOf()).toBeLessThan(3);
    const shelf = new Shelf(path, "an edition");
    shelf.set("four", 4);
    shelf.save();
    expect(new Shelf(path, "an edition").get("four")).toBe(4);
  }
});

test("what is added stands beside what was there, whichever run added it", () => {
  const [one, other] = [new Shelf(path, "an edition"), new Shelf(path, "an edition")];
  one.get("two");
  one.set("four", 4);
  other.set("five", 5);
  other.set("two", "anew");
  one.save();
  other.save();
  const shelf = new Shelf(path, "an edition");
  expect(["one", "two", "four", "five"].map((key) => shelf.get(key))).toEqual([values.one, "anew", 4, 5]);
});

test("with any bit turned over, what it was part of is nothing", () => {
  for (let bit = 0; bit < whole.length * 8; bit += 1) {
    const bytes = Buffer.from(whole);
    bytes[bit >> 3] = (bytes[bit >> 3] as number) ^ (1 << (bit & 7));
    writeFileSync(path, bytes);
    // A line that does not end goes on to the end of the next one.
    expect([1, 2]).toContain(thereOf());
  }
});

test("anything else in its place is nothing, and after it changes nothing", () => {
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 1, maxLength: 300 }), fc.boolean(), (bytes, after) => {
      writeFileSync(path, after ? Buffer.concat([whole, bytes]) : bytes);
      expect(thereOf()).toBe(after ? 3 : 0);
    }),
  );
});

test("written by another edition it is empty, whatever its name", () => isEmpty("another edition"));

const others: readonly (readonly [string, () => void])[] = [
  ["a folder", () => mkdirSync(path)],
  ["a link to nothing", () => symlinkSync("nowhere", path)],
  ["a link to itself", () => symlinkSync(path, path)],
  ["a link to what never ends", () => symlinkSync("/dev/zero", path)],
  ["a pipe nobody writes to", () => void execFileSync("mkfifo", [path])],
];

test.each(others)("%s in its place is as nothing, and does not keep a run waiting", (_, put) => {
  rmSync(path);
  put();
  isEmpty();
  const shelf = new Shelf(path, "an edition");
  shelf.set("four", 4);
  shelf.save();
  expect(shelf.get("four")).toBe(4);
});

test("what a run that was killed left beside is cleared away by the next that saves", () => {
  // No process has this number: it is above what the system gives.
  writeFileSync(`${path}-99999999-0123abcd`, "half");
  const shelf = new Shelf(path, "an edition");
  shelf.set("four", 4);
  shelf.save();
  expect(readdirSync(top).filter((name) => name.startsWith("entries"))).toEqual(["entries-0123456789abcdef"]);
});

test("a link is replaced, and what it led to is left as it was", () => {
  const elsewhere = join(top, "elsewhere");
  renameSync(path, elsewhere);
  symlinkSync(elsewhere, path);
  const shelf = new Shelf(path, "an edition");
  expect(shelf.get("two")).toEqual([1, 2, 3]);
  shelf.set("four", 4);
  shelf.save();
  expect(readFileSync(elsewhere)).toEqual(whole);
  expect(new Shelf(path, "an edition").get("four")).toBe(4);
});

test("many lines, which are checked together, are each as they were put or nothing, whatever is harmed", () => {
  const many = Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`key${index}`, `value ${index} ä`]));
  const filled = new Shelf(path, "an edition");
  for (const [key, value] of Object.entries(many)) filled.set(key, value);
  filled.save();
  const bytes = readFileSync(path);
  const there = (by = "an edition"): number => {
    const shelf = new Shelf(path, by);
    // Twice: what was read once is not read again.
    for (const [key, value] of Object.entries(many)) expect([value, undefined]).toContain(shelf.get(key));
    return Object.entries(many).filter(([key, value]) => shelf.get(key) === value).length;
  };
  expect(there()).toBe(40);
  expect(there("another edition")).toBe(0);
  fc.assert(
    fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, other) => {
      const harmed = Buffer.from(bytes);
      harmed[at] = (harmed[at] as number) ^ other;
      writeFileSync(path, harmed);
      expect(there()).toBeGreaterThanOrEqual(38);
    }),
  );
  fc.assert(
    fc.property(fc.nat(bytes.length), fc.nat(200), (at, length) => {
      writeFileSync(path, Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + length)]));
      there();
    }),
  );
});
