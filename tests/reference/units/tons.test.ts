import { readQuantity } from "@plumbmark/calc";
import { describe, expect, test } from "vitest";
import { reference } from "../check.js";

const NIST = "NIST SP 811, appendix B.8: ton, short (2000 lb) 907.1847 kg; ton, long (2240 lb) 1016.047 kg";

describe("three tons", () => {
  for (const [text, printed, within] of [
    ["1 short ton", 907.1847, 5e-5],
    ["1 long ton", 1016.047, 5e-4],
    ["1 t", 1000, 1e-9],
    ["1 metric ton", 1000, 1e-9],
  ] as const)
    reference({
      name: `\`${text}\``,
      source: NIST,
      basis: "published",
      printed,
      within,
      because: "half a unit of the last printed digit",
      got: () => {
        const read = readQuantity(text, ["mass", "force"]);
        return read.ok ? read.quantity.value : Number.NaN;
      },
    });

  test.each(["2 T", "2 ton", "2 tons", "2 Ton", "2 TON"])("`%s` may be any of them and is refused", (text) => {
    const read = readQuantity(text, ["mass", "force"]);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.allowed).toContain("short ton");
    expect(read.allowed).toContain("long ton");
    expect(read.allowed).toContain("`t`");
  });
});
