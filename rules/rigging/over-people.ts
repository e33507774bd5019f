import type { Build } from "@plumbmark/kit";

/** Whether people are below; undefined where it is not written down. */
export function overPeople(build: Build): boolean | undefined {
  const over = build.reader.data("rigging.over-people");
  return typeof over === "boolean" ? over : undefined;
}
