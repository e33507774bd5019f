import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "document.parts",
  states: "Every part, lot, connector and cell referred to exists.",
  level: "shall",
  why: "A part that is in no catalogue has no weight, no power and no rating; nothing about it can be told.",
  judged:
    "Every name is looked up in the catalogue, the stock list, the connector table and the faces. Each one that is not found is a check of its own.",
  sources: ["house"],
  // What is wrong comes from reading the document, each with its own place; what is left to say here is that nothing is.
  *checks({ build }) {
    if (build.reader.placed.data === null) {
      yield open(build, {
        says: "The front matter cannot be read, so what it refers to cannot be told.",
        mend: "Put the front matter right first.",
      });
      return;
    }
    if (!build.mistakes.some((mistake) => mistake.rule === "document.parts"))
      yield is(build, { holds: true, says: "Everything the document refers to exists." });
  },
});
