import { rule } from "@plumbmark/kit";
import { approved } from "./approved.js";
import { prepared } from "./prepared.js";
import { twoPeople } from "./two-people.js";

export default rule({
  id: "document.sign-off",
  states: "A build for building is prepared and approved by two different people who may.",
  level: "shall",
  why: "Who has drawn a thing no longer sees what is wrong with it. A second pair of eyes does, and somebody answers for it.",
  judged:
    "Who prepared it and who approved it have to be named and to be two people; a draft needs neither. A name is read whatever its capitals, blanks, invisible letters and order of words are: `Tallow, R.` is `R. Tallow`. A placeholder names nobody. Where one name may be short for the other, it is open whether they are two, unless the house standard lists both. Its `people` says who may prepare and who may approve.",
  sources: ["practice"],
  *checks({ build }) {
    if (build.reader.text("status") === "draft") return;
    yield* prepared(build);
    yield* approved(build);
    yield* twoPeople(build);
  },
});
