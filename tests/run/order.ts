import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The slowest project first: it leaves the small files for the end, when one worker waits for the other. */
const PROJECTS = ["deep", "deep browser", "process", "browser", "unit"];

const place = ({ project }: TestSpecification): number => PROJECTS.indexOf(project.name);

/** Files of one project after another, so that their workers stay; within it as vitest has them, slow before quick. */
export default class Order extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.sort((one, other) => place(one) - place(other));
  }
}
