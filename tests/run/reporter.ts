import type { TestModule, Vitest } from "vitest/node";
import { effort } from "./effort.js";
import { Times } from "./times.js";

interface Meta {
  readonly reference?: { readonly source: string; readonly basis: string };
}

/**
 * Prints the seed of the random cases; after the usual report, how many checks rest on each published source, where the
 * time went, what failed, and the closing line.
 */
export default class ClosingReporter {
  readonly #times = new Times();

  onInit(_vitest: Vitest): void {
    process.stdout.write(this.#seed());
  }

  onTestModuleStart(module: TestModule): void {
    this.#times.begin(module);
  }

  onTestModuleEnd(module: TestModule): void {
    this.#times.end(module);
  }

  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[] = []): void {
    const sources = new Map<string, number>();
    let passed = 0;
    let failed = unhandled.length;
    const names: string[] = [];
    const notRun: string[] = [];
    for (const module of modules) {
      if (
        module.state() === "failed" &&
        [...module.children.allTests()].every((test) => test.result().state !== "failed")
      ) {
        failed += 1;
        names.push(module.relativeModuleId);
      }
      const tests = [...module.children.allTests()];
      if (tests.length > 0 && tests.every((test) => test.result().state === "skipped"))
        notRun.push(module.relativeModuleId);
      for (const test of tests) {
        const state = test.result().state;
        if (state === "passed") passed += 1;
        else if (state === "failed") {
          failed += 1;
          names.push(`${module.relativeModuleId}: ${test.fullName}`);
        }
        const { reference } = test.meta() as Meta;
        if (reference)
          sources.set(
            `${reference.source} (${reference.basis})`,
            (sources.get(`${reference.source} (${reference.basis})`) ?? 0) + 1,
          );
      }
    }
    this.#table(sources);
    process.stdout.write(this.#times.text(modules));
    // Said once more beside the closing line: the sources push the report of a failure far up.
    for (const name of notRun) process.stdout.write(`\nnot run: ${name}`);
    for (const name of names) process.stdout.write(`\nfailed: ${name}`);
    if (failed > 0) process.stdout.write(`\n${this.#seed()}`);
    process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  }

  #seed(): string {
    const { seed, deep } = effort;
    return `${deep ? "Deep run; r" : "R"}andom cases from seed ${seed}; again with PLUMBMARK_SEED=${seed}${deep ? " PLUMBMARK_DEEP=1" : ""}\n`;
  }

  #table(sources: ReadonlyMap<string, number>): void {
    if (sources.size === 0) return;
    const rows = [...sources].sort((one, other) => other[1] - one[1] || one[0].localeCompare(other[0]));
    const total = rows.reduce((sum, [, count]) => sum + count, 0);
    process.stdout.write(`\nSource → checks (${total} in all)\n`);
    for (const [source, count] of rows) process.stdout.write(`${String(count).padStart(5)}  ${source}\n`);
  }
}
