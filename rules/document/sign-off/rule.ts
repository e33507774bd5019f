import { rule } from "@plumbmark/kit";
import { approved } from "./approved.js";
import { prepared } from "./prepared.js";
import { twoPeople } from "./two-people.js";

export default rule({
  id: "document.sign-off",
  states:
    "A build for building is prepared and approved by two different people who may, and still is what was approved.",
  level: "shall",
  why: "Who has drawn a thing no longer sees what is wrong with it. A second pair of eyes does, and somebody answers for it. What is changed after they looked, nobody looked at.",
  judged:
    "Who prepared it and who approved it have to be named and to be two people; a draft needs neither. A name is read whatever its capitals, blanks, invisible letters and order of words are: `Tallow, R.` is `R. Tallow`. A placeholder names nobody. Where one name may be short for the other, it is open whether they are two, unless the house standard lists both. Its `people` says who may prepare and who may approve. The approval is of a content: `approved` has a code, made of the document and of what it rests on: the parts and lots it names, and the house standards in force. Ticked tasks and the step to `as-built` are no other content; anything else is, and needs a new approval. The code tells that something changed, not who changed it.",
  sources: ["practice"],
  *checks({ build }) {
    if (build.reader.text("status") === "draft") return;
    yield* prepared(build);
    yield* approved(build);
    yield* twoPeople(build);
  },
});
