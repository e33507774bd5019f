import { expect, test } from "vitest";
import { committed, type Repository } from "./scratch.js";

// What is committed is judged by the code that is committed with it, whatever lies in the work tree.

const RULE = "house-rules/height.mjs";
const rule = (says: string): string => `
import { plugin, rule, is } from "plumbmark/kit";
import { word } from "./word.mjs";
export default plugin({ kit: 1, rules: [rule({
  id: "house.height", states: "A face is high.", level: "should", why: "It is.", judged: "By nothing.", sources: ["house"],
  *checks({ build }) { for (const face of build.faces) yield is(face, { holds: false, says: \`${says} \${word}\`, mend: "Nothing." }); },
})] });
`;

function repository(): Repository {
  const made = committed();
  made.change("house-standard.yaml", "practice: us\n", `practice: us\nrules-from: ["./${RULE}"]\n`);
  made.write(RULE, rule("as committed"));
  made.write("house-rules/word.mjs", 'export const word = "with its word";\n');
  made.approve();
  made.commit();
  return made;
}

const told = async (made: Repository): Promise<string> => {
  const { out, err } = await made.plumbmark("inspect", "--staged", "--as", "gnu", "--no-cache");
  expect(err).toBe("");
  return out;
};

test("a plugin that was changed and not staged does not run", async () => {
  const made = repository();
  made.write(RULE, rule("as it lies about"));
  made.write("house-rules/word.mjs", 'export const word = "with another word";\n');
  made.change("builds/small-screen.md", "revision: 2", "revision: 3");
  made.git("add", "builds/small-screen.md");
  const found = await told(made);
  expect(found).toContain("as committed with its word");
  expect(found).not.toContain("as it lies about");
  expect(found).not.toContain("another word");
});

test("what is staged of a plugin runs, and not what was changed after", async () => {
  const made = repository();
  made.write(RULE, rule("as staged"));
  made.git("add", RULE);
  made.write(RULE, rule("as it lies about"));
  made.change("builds/small-screen.md", "revision: 2", "revision: 3");
  made.git("add", "builds/small-screen.md");
  const found = await told(made);
  expect(found).toContain("as staged with its word");
  expect(found).not.toContain("as it lies about");
});
