import { is, rule } from "@plumbmark/kit";

export default rule({
  id: "document.front-matter",
  states: "The front matter is well formed and follows the schema.",
  level: "shall",
  why: "A key that is misspelt or a number without its unit is a value nobody reads.",
  judged:
    "YAML 1.2 with every place kept, the JSON Schema of build documents, and every quantity by its kind. Each mistake is a check of its own with its place; this rule cannot be waived or switched off.",
  sources: ["house"],
  // What is wrong comes from reading the document, each with its own place; what is left to say here is that nothing is.
  *checks({ build }) {
    if (!build.mistakes.some((mistake) => mistake.rule === "document.front-matter"))
      yield is(build, { holds: true, says: "The front matter is well formed and follows the schema." });
  },
});
