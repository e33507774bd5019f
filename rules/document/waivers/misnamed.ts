import type { Build } from "@plumbmark/kit";

export type DocumentWaiver = Build["waivers"][number];

interface Wrong {
  readonly says: string;
  readonly mend: string;
}

/** What stands in the body has paths of its own. */
const OF_BODY = /^(?:cautions|links|sections|tasks)(?:\.|$)/u;

/** Whether a place is one: in the front matter, among the computed values, or in the body. */
const leads = (build: Build, where: string | undefined): boolean =>
  where === undefined || OF_BODY.test(where) || build.reader.has(where) || build.values.has(where);

const NAMES: Readonly<Record<DocumentWaiver["names"], ((waiver: DocumentWaiver) => Wrong) | undefined>> = {
  rule: undefined,
  topic: ({ label, rule }) => ({
    says: `${label} names \`${rule}\`, which is no single rule.`,
    mend: "Write one waiver for each rule that is excused; a whole topic cannot be waived.",
  }),
  unwaivable: ({ label, rule }) => ({
    says: `${label} names \`${rule}\`, which cannot be waived.`,
    mend: "Mend what it reports, and take the waiver out.",
  }),
  unknown: ({ label, rule }) => ({
    says: `${label} names the rule \`${rule}\`, which there is not.`,
    mend: "List the rules with `plumbmark rules`.",
  }),
};

/** What is wrong with the rule or the place a waiver names; undefined when both are there. */
export function misnamed(build: Build, waiver: DocumentWaiver): Wrong | undefined {
  const wrong = waiver.rule === undefined ? undefined : NAMES[waiver.names]?.(waiver);
  if (wrong || leads(build, waiver.where)) return wrong;
  return {
    says: `${waiver.label} is for \`${waiver.where}\`, which is not in the document.`,
    mend: "Write the path the check is reported with, such as `faces.banner`, or leave `where` out for the whole document.",
  };
}
