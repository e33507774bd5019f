import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { starterPages } from "./starter-files.js";

test("a rule that another one's text names is a link there to its page", () => {
  const pages = starterPages();
  const named = rules.flatMap(({ id, why, judged }) =>
    rules
      .filter((other) => other.id !== id && ` ${why} ${judged} `.split(/[^a-z.-]+|\.(?!\w)/u).includes(other.id))
      .map((other) => [id, other.id] as const),
  );
  // The load of a circuit leaves the neutral to the rule on the balance of legs.
  expect(named).toContainEqual(["power.circuit-load", "power.leg-balance"]);
  for (const [id, other] of named)
    expect(pages.get(`rules/${id}.html`), id).toContain(`<a href="../rules/${other}.html">${other}</a>`);
});
