import * as module from "node:module";

const NAMES = ["@plumbmark/kit", "@plumbmark/kit/calc", "@plumbmark/kit/tryout", "@plumbmark/calc"];

/** The one package to install has the kit under its own name: `plumbmark/kit`. */
const asInstalled = (name: string): string => name.replace(/^@plumbmark\/kit/u, "plumbmark/kit");

type Next = (name: string, context: unknown) => { url: string };
type Hooks = { resolve: (name: string, context: unknown, next: Next) => { url: string; shortCircuit?: boolean } };

/** The same for a Node.js that takes its hooks from a module of their own. */
const HOOKS = `let own;
export const initialize = (data) => { own = data; };
export const resolve = async (name, context, next) => {
  try { return await next(name, context); }
  catch (error) { if (own[name]) return { url: own[name], shortCircuit: true }; throw error; }
};`;

/**
 * Lets a plugin that is a file of a docs repository import the kit without an install there: what it cannot find is
 * taken from here. A kit of its own comes first.
 */
export function offerOwnPackages(): void {
  const own = Object.fromEntries(
    NAMES.flatMap((name) => [name, asInstalled(name)].map((each) => [each, import.meta.resolve(name)])),
  );
  const { registerHooks } = module as unknown as { readonly registerHooks?: (hooks: Hooks) => void };
  if (!registerHooks) {
    module.register(`data:text/javascript,${encodeURIComponent(HOOKS)}`, { data: own });
    return;
  }
  registerHooks({
    resolve(name, context, next) {
      try {
        return next(name, context);
      } catch (error) {
        const url = own[name];
        if (url === undefined) throw error;
        return { url, shortCircuit: true };
      }
    },
  });
}
