import { type SchemaNode, schemas } from "@plumbmark/core";
import { linesOfKeys } from "./lines-of-keys.js";

const root = schemas.surveySchema as SchemaNode;

/** Written otherwise, so that what is asked first is at hand. */
const WRITTEN = new Set(["survey", "title", "practice"]);

/** What is known of the venue before anybody goes there. */
export interface HallFacts {
  readonly name: string;
  readonly title: string;
  readonly practice: string | undefined;
}

/** A survey to fill in: every key with what it means, what to look for and where it is found. */
export const venueForm = ({ name, title, practice }: HallFacts): string => `---
survey: ${name}                # what builds write under \`venue\`
title: ${title}
${practice === undefined ? "#practice:                  # us or iec" : `practice: ${practice}`}
# Take the # in front of a key away when you write its value, and put a name where NAME stands; copy the lines below it
# for a second one, or write \`like: NAME\` in it and only what is different. What is not written down is asked for by the
# builds that need it, and never guessed: leave out what you did not see. A figure that is a guess carries a question
# mark behind its unit, as in \`70 ft ?\`; \`at most 60 ft\` is a bound, which often is enough.
# What a beam, a floor or a wall carries is stated by a licensed engineer, never by whoever surveys it.
${linesOfKeys(root, root, "", practice, WRITTEN).join("\n")}
---

# ${title}

<!-- For people, and never published: how to get in and park, whom to call, where keys are, what house rules there are. -->
`;
