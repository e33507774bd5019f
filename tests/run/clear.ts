import { rmSync } from "node:fs";
import type { TestProject } from "vitest/node";

/** Takes away what workers have made for one another. */
export default (project: TestProject): (() => void) => {
  const { ofThisRun } = project.config.provide;
  return () => rmSync(ofThisRun as string, { recursive: true, force: true });
};
