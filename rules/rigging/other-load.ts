import type { Bar, Turns } from "@plumbmark/kit";

/** What else hangs on a bar, where any is written: it is what can come off without the faces being others. */
export const otherLoadTurns = (bar: Bar): Turns | undefined =>
  !bar.build.reader.has(`${bar.path}.other-load`) ? undefined : { path: `${bar.path}.other-load`, sense: "at most" };
