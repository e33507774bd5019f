import { expect, test } from "vitest";
import { nobodyIn, type Person, person, samePerson } from "./person.js";

const key = (name: string) => person(name)?.key;

test.each([
  "r. tallow",
  " R.  Tallow ",
  "Tallow, R.",
  "TALLOW R",
  "R.\u00A0Tallow",
  "R. Tal\u200Blow",
  "R. Tal\u00ADlow",
  "Ｒ. Ｔａｌｌｏｗ",
  "Mr R. Tallow",
  "R. Tallow, PE",
  "R. Tallow\u202E",
])("`%s` is R. Tallow", (name) => {
  expect(key(name)).toBe(key("R. Tallow"));
});

test("an accent, an apostrophe or a hyphen makes nobody another person", () => {
  expect(key("J. Ardlé")).toBe(key("J. Ardle"));
  expect(key("J. Ardle\u0301")).toBe(key("J. Ardlé"));
  expect(key("A. O’Finch")).toBe(key("A. O'Finch"));
  expect(key("Anne-Mary Finch")).toBe(key("Anne Mary Finch"));
});

test.each([
  "TBD",
  "?",
  "n/a",
  "to be confirmed",
  "nobody",
  "No one",
  "none",
  "me",
  "the engineer",
  "",
  "\u200B",
  "R.",
  "X",
  "42",
  "same as above",
])("`%s` names nobody", (name) => {
  expect(person(name)).toBeUndefined();
});

test("a letter of another alphabet that looks the same is told", () => {
  // The second letter is the Cyrillic one, U+0430.
  expect(nobodyIn("R. T\u0430llow")).toBe("mixes letters of several alphabets within a word");
  expect(person("Р. Таллов")?.name).toBe("Р. Таллов");
  expect(person("李")?.name).toBe("李");
});

test("a short name may be that of the long one, and nobody can tell", () => {
  const same = (one: string, other: string) => samePerson(person(one) as Person, person(other) as Person);
  expect(same("R. Tallow", "Tallow, R.")).toBe("same");
  expect(same("R. Tallow", "Robin Tallow")).toBe("perhaps");
  expect(same("Tallow", "R. Tallow")).toBe("perhaps");
  expect(same("M. Tallow", "R. Tallow")).toBe("different");
  expect(same("Robin Tallow", "Ruth Tallow")).toBe("different");
  expect(same("R. Tallow", "M. Finch")).toBe("different");
  expect(same("R. T.", "R. Tallow")).toBe("different");
});
