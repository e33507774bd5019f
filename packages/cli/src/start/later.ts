import { setFlagsFromString } from "node:v8";

/**
 * How much of a function is run before V8 thinks of optimizing it, many times what is usual: most command lines are over
 * before that pays, and a long one loses nothing that can be measured. Only the V8 of Node.js 20 is asked: those of 22
 * and 24 do not know the setting and would say so on standard error, and they begin with a lesser compiler anyway.
 * @param v8 version of V8, as in `process.versions`
 */
export const laterFor = (v8: string): string | undefined =>
  v8.startsWith("11.3.") ? "--interrupt-budget=1300000" : undefined;

/** Has V8 optimize later, where it can be told to. */
export function optimizeLater(): void {
  const flag = laterFor(process.versions.v8);
  if (flag !== undefined) setFlagsFromString(flag);
}
