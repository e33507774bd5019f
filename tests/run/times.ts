import type { TestModule } from "vitest/node";

interface Span {
  from: number;
  to: number;
  files: number;
  tests: number;
}

const seconds = (milliseconds: number): string => `${(milliseconds / 1000).toFixed(1)} s`.padStart(8);
const SLOWEST = 10;

/** How long each project took from its first file to its last, and which files took longest. */
export class Times {
  readonly #projects = new Map<string, Span>();

  begin({ project }: TestModule): void {
    const now = performance.now();
    if (!this.#projects.has(project.name)) this.#projects.set(project.name, { from: now, to: now, files: 0, tests: 0 });
  }

  end({ project, children }: TestModule): void {
    const span = this.#projects.get(project.name);
    if (!span) return;
    span.to = performance.now();
    span.files += 1;
    span.tests += [...children.allTests()].length;
  }

  text(modules: readonly TestModule[]): string {
    const projects = [...this.#projects].map(
      ([name, { from, to, files, tests }]) => `${seconds(to - from)}  ${name}: ${tests} tests in ${files} files\n`,
    );
    const spent = (module: TestModule): number => {
      const { collectDuration, duration, setupDuration } = module.diagnostic();
      return collectDuration + duration + setupDuration;
    };
    const slowest = [...modules]
      .sort((one, other) => spent(other) - spent(one))
      .slice(0, SLOWEST)
      .map((module) => `${seconds(spent(module))}  ${module.relativeModuleId}\n`);
    return `\nTime of each project\n${projects.join("")}\nSlowest files, with what they import\n${slowest.join("")}`;
  }
}
