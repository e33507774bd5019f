import { execFileSync } from "node:child_process";
import {
  chmodSync,
  chownSync,
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
import { Store } from "./store.js";

// Whatever becomes of the file, a store gives what was put there or nothing, and can be used again.

const top = mkdtempSync(join(tmpdir(), "plumbmark-harm-"));
const path = join(top, "entries-0123456789abcdef");
afterAll(() => rmSync(top, { recursive: true, force: true }));

const values = { one: { a: "ä text\nof two lines" }, two: [1, 2, 3], three: "" };

let whole: Buffer;
beforeEach(() => {
  rmSync(path, { recursive: true, force: true });
  const store = new Store(path, "an edition");
  for (const [key, value] of Object.entries(values)) store.set(key, value);
  store.save();
  whole = readFileSync(path);
});

const isEmpty = (by = "an edition"): void => {
  for (const key of Object.keys(values)) expect(new Store(path, by).get(key)).toBeUndefined();
};

/** Gives how many are there as they were put; what is not is nothing. */
function thereOf(): number {
  const store = new Store(path, "an edition");
  const found = Object.entries(values).filter(([key, value]) => {
    const given = store.get(key);
    if (given !== undefined) expect(given).toEqual(value);
    return given !== undefined;
  });
  return found.length;
}

test("as it was written it is read", () => {
  for (const [key, value] of Object.entries(values)) expect(new Store(path, "an edition").get(key)).toEqual(value);
});

test("cut short at any length it gives whole values or nothing, and what is added then is there", () => {
  for (let length = 0; length < whole.length; length += 1) {
    writeFileSync(path, whole.subarray(0, length));
    expect(thereOf()).toBeLessThan(3);
    const store = new Store(path, "an edition");
    store.set("four", 4);
    store.save();
    expect(new Store(path, "an edition").get("four")).toBe(4);
  }
});

test("what is added stands beside what was there, whichever run added it", () => {
  const [one, other] = [new Store(path, "an edition"), new Store(path, "an edition")];
  one.get("two");
  one.set("four", 4);
  other.set("five", 5);
  other.set("two", "anew");
  one.save();
  other.save();
  const store = new Store(path, "an edition");
  expect(["one", "two", "four", "five"].map((key) => store.get(key))).toEqual([values.one, "anew", 4, 5]);
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
  const store = new Store(path, "an edition");
  store.set("four", 4);
  store.save();
  expect(store.get("four")).toBe(4);
});

test("what a run that was killed left beside is cleared away by the next that saves", () => {
  // No process has this number: it is above what the system gives.
  writeFileSync(join(top, ".entries-0123456789abcdef-99999999-0123ab"), "half");
  const store = new Store(path, "an edition");
  store.set("four", 4);
  store.save();
  expect(readdirSync(top).filter((name) => name.includes("entries"))).toEqual(["entries-0123456789abcdef"]);
});

test("a link is not followed: it is replaced, and what it led to is left as it was", () => {
  const elsewhere = join(top, "elsewhere");
  renameSync(path, elsewhere);
  symlinkSync(elsewhere, path);
  const store = new Store(path, "an edition");
  expect(store.get("two")).toBeUndefined();
  store.set("four", 4);
  store.save();
  expect(readFileSync(elsewhere)).toEqual(whole);
  expect(new Store(path, "an edition").get("four")).toBe(4);
});

test("a file that others may write to is not read, and is replaced by one of our own", () => {
  for (const mode of [0o666, 0o620, 0o602]) {
    chmodSync(path, mode);
    isEmpty();
  }
  const store = new Store(path, "an edition");
  store.set("four", 4);
  store.save();
  expect(new Store(path, "an edition").get("four")).toBe(4);
  isEmpty();
});

test.runIf(process.getuid?.() === 0)("a file of somebody else is not read", () => {
  chownSync(path, 65_534, 65_534);
  isEmpty();
});
