import type { DraftRecord } from "@plumbmark/draft";

/** What has to be done before the build for options to be possible; what is asked of all of them is told once. */
export function conditionLines({ options }: DraftRecord): readonly string[] {
  const asked = new Map<string, number[]>();
  for (const { number, "possible-if": conditions } of options)
    for (const each of conditions) asked.set(each, [...(asked.get(each) ?? []), number]);
  return [...asked].map(([condition, numbers]) =>
    numbers.length === options.length
      ? condition
      : `Option${numbers.length === 1 ? "" : "s"} ${numbers.join(", ")}: ${condition}`,
  );
}
