import picomatch from "picomatch";

/** Folders that never hold documents of ours. */
const NEVER: readonly string[] = ["**/node_modules/**", "**/.git/**"];

/** What the patterns of a house standard ask for; paths are relative to the root, with forward slashes. */
export interface Patterns {
  readonly fits: (file: string) => boolean;
  /** Whether something that fits may lie in a folder, at whatever depth. */
  readonly reaches: (folder: string) => boolean;
}

/** Whether the steps to a folder are those a pattern begins with; `**` stands for any number of steps. */
function begins(pattern: string): (steps: readonly string[]) => boolean {
  // Braces and brackets may hold a slash: such a pattern may reach anywhere.
  if (/[{(]/u.test(pattern)) return () => true;
  const parts = pattern
    .split("/")
    .slice(0, -1)
    .filter((part) => part !== "" && part !== ".");
  const any = parts.indexOf("**");
  const fixed = (any < 0 ? parts : parts.slice(0, any)).map((part) => picomatch(part));
  return (steps) =>
    (any >= 0 || steps.length <= fixed.length) && steps.every((step, index) => fixed[index]?.(step) ?? true);
}

/** What a path has to begin and end with to fit a pattern: asked first, since most paths have neither. */
function ends(pattern: string): (path: string) => boolean {
  // What stands before the first sign and after the last is meant as it is written; a sign may hold others.
  const [head = "", tail = ""] = /[\\{([!+@|]|^\./u.test(pattern)
    ? []
    : [/^[^*?]*/u.exec(pattern)?.[0].replace(/\/+$/u, ""), /[^*?/]*$/u.exec(pattern)?.[0]];
  return (path) => path.startsWith(head) && path.endsWith(tail);
}

/** Patterns that lead nowhere else than down: others are refused where the house standard is read. */
export function readPatterns(written: readonly string[]): Patterns {
  const wanted = written.filter((pattern) => !pattern.startsWith("!"));
  const refused = written
    .filter((pattern) => pattern.startsWith("!"))
    .map((each) => each.slice(1))
    .filter((pattern) => pattern !== "");
  const [usual, closed] = [
    picomatch([...wanted], { ignore: refused }),
    picomatch([...wanted], { ignore: [...NEVER, ...refused] }),
  ];
  const may = wanted.map(ends);
  const fits = (path: string): boolean =>
    may.some((each) => each(path)) && (/node_modules|\.git/u.test(path) ? closed : usual)(path);
  const begin = wanted.map(begins);
  const hidden = wanted.some((pattern) => /(?:^|\/)\.[^/]/u.test(pattern));
  const reaches = (folder: string): boolean => {
    const steps = folder.split("/");
    if (steps.some((step) => step === "node_modules" || step === ".git" || (step.startsWith(".") && !hidden)))
      return false;
    return begin.some((each) => each(steps));
  };
  return { fits, reaches };
}
