import { expect, test } from "vitest";
import { inspectText, SMALL } from "../documents/repository.js";

// Common practice, no source: under a roof without walls daylight comes in, and 3,000 cd/m² blind nobody.
test.each([
  ["indoors", ["fails"]],
  ["sheltered", []],
  ["outdoors", []],
])("a luminance for daylight is judged %s as it comes out", (exposure, outcomes) => {
  const text = SMALL.replace(/^exposure: .*\n/mu, "").replace(/^light: .*\n/mu, "");
  const { checks } = inspectText(
    text.replace("\nfaces:\n", `\nexposure: ${exposure}\nlight: {target: 3000 cd/m2}\nfaces:\n`),
  );
  expect(checks.filter(({ rule }) => rule === "viewing.glare").map(({ outcome }) => outcome)).toEqual(outcomes);
});
