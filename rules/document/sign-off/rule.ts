import { is, open, rule } from "@plumbmark/kit";

/** Names that differ only in capitals or blanks are the same person. */
const person = (name: string | undefined): string => (name ?? "").trim().replace(/\s+/gu, " ").toLowerCase();

export default rule({
  id: "document.sign-off",
  states: "A build for building is prepared and approved by two different people.",
  level: "shall",
  why: "Who has drawn a thing no longer sees what is wrong with it. A second pair of eyes does, and somebody answers for it.",
  judged: "The names under `prepared-by` and `approved-by` have to be there and to differ; a draft needs neither.",
  sources: ["practice"],
  *checks({ build }) {
    if (build.reader.text("status") === "draft") return;
    const [prepared, approved] = ["prepared-by", "approved-by"].map((key) => build.reader.text(key));
    const absent = ["prepared-by", "approved-by"].filter((key) => person(build.reader.text(key)) === "");
    if (absent.length > 0) {
      const who = absent.map((key) => (key === "prepared-by" ? "who prepared it" : "who approved it")).join(" and ");
      yield open(
        { path: "status", label: build.label },
        {
          says: `The build does not say ${who}.`,
          mend: `Write ${absent.map((key) => `\`${key}\``).join(" and ")} once it has been done.`,
          needs: absent,
        },
      );
      return;
    }
    const two = person(prepared) !== person(approved);
    yield is(
      { path: "approved-by", label: build.label },
      {
        holds: two,
        says: two
          ? `${prepared} prepared it and ${approved} approved it.`
          : `${prepared} prepared it and approved it, too.`,
        mend: "Have it approved by somebody else.",
      },
    );
  },
});
