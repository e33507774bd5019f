import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "document.parts",
  states: "Every part, lot, connector and cell referred to exists, and is written without a mistake.",
  level: "shall",
  why: "A part that is in no catalogue has no weight, no power and no rating; nothing about it can be told.",
  judged:
    "Every name is looked up in the catalogue, the stock list, the connector table and the faces. Each one that is not found is a check of its own. So is each part, those of an assembly among them, the survey of the venue, and the lots and items of the stock list it takes, in which something cannot be read or stands twice: it is open until that is put right in its file, for a value that is not read counts nowhere, and of two the wrong one may.",
  sources: ["house"],
  // What is wrong comes from reading the document, each with its own place; what is left to say here is that nothing is.
  *checks({ build }) {
    if (build.reader.isUnread) {
      yield open(build, {
        says: "The front matter cannot be read, so what it refers to cannot be told.",
        mend: "Put the front matter right first.",
      });
      return;
    }
    for (const { path, label, file, mistakes } of build.mistaken)
      yield open(
        { path, label },
        {
          says: `${label} is written with ${mistakes.length === 1 ? "a mistake" : `${mistakes.length} mistakes`} in ${file}, and nothing can rest on it.`,
          mend: `Put it right in ${file}: ${mistakes[0]?.mend ?? ""}`,
          needs: [...new Set(mistakes.map((mistake) => mistake.path))].filter((each) => each !== ""),
        },
      );
    if (build.mistaken.length > 0) return;
    if (!build.mistakes.some((mistake) => mistake.rule === "document.parts"))
      yield is(build, { holds: true, says: "Everything the document refers to exists." });
  },
});
