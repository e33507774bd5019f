import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "document.links",
  states: "Local links and images lead somewhere.",
  level: "should",
  why: "A drawing that is linked and not there is missed on site, when nobody can send it any more.",
  judged:
    "Links to headings of the document are looked up in it; links to build documents, parts, the stock list and the house standard among the files that are read. Whether any other file is there cannot be told, so the check stays open. A link to `calc:schedules.` has to name one of the schedules. Links to other hosts are not followed. The path of a link is `links` and its number in the body.",
  sources: ["house"],
  *checks({ build }) {
    for (const [index, { url, place, leads }] of build.localLinks.entries()) {
      const where = { path: `links.${index + 1}`, label: "The text", place };
      if (leads === undefined)
        yield open(where, {
          says: `\`${url}\` is none of the files that are read, so whether it is there cannot be told.`,
          mend: "Look whether the file is there; if it is meant to be a build document or a part, correct the link.",
        });
      else
        yield is(where, {
          holds: leads,
          says: leads
            ? `\`${url}\` is there.`
            : url === ""
              ? "A link leads nowhere."
              : `The document has no heading \`${url}\`.`,
          mend: "Correct the link, or take it out.",
        });
    }
    for (const { name, place, mend } of build.scheduleLinks)
      yield is(
        { path: `schedules.${name}`, label: "The text", place },
        {
          holds: mend === undefined,
          says: mend === undefined ? `There is a schedule \`${name}\`.` : `There is no schedule \`${name}\`.`,
          mend: mend ?? "Correct the link.",
        },
      );
  },
});
