import { printer } from "@plumbmark/calc";
import {
  type Booked,
  type DocumentEntry,
  Ledger,
  sharedKey,
  type UseEntry,
  type WorstUse,
  worstTogether,
} from "@plumbmark/core";
import type { Check } from "../report/form.js";

/** Rules by what they are about. */
const RULES: Readonly<Record<UseEntry["of"], string>> = {
  circuit: "power.shared-circuits",
  supply: "power.shared-circuits",
  outlets: "power.shared-circuits",
  point: "rigging.shared-structure",
  structure: "rigging.shared-structure",
  processor: "data.shared-processor",
  item: "stock.promised-twice",
  lot: "stock.promised-twice",
};

const KINDS = { A: "current", kg: "mass", "{pixel}": "pixels", "{count}": "count" } as const;

/** A document of a record, and whose stock it takes from. */
export interface Recorded {
  readonly from: string;
  readonly holdings: string | undefined;
  readonly document: DocumentEntry;
}

/** What is owned is one thing with that of another repository only where both share a stock. */
const keyOf = (use: UseEntry, { from, holdings }: Recorded): string => {
  const isOwned = use.of === "item" || use.of === "lot";
  return `${isOwned ? (holdings ?? from) : ""}\u0000${sharedKey(use)}`;
};

interface Entered extends Booked {
  readonly from: string;
  readonly key: string;
}

const enteredOf = (each: Recorded): readonly Entered[] =>
  (each.document.uses ?? []).map((use) => {
    const { from, to, ...rest } = use;
    const stay = { from, ...(to === undefined ? {} : { to }) };
    return { ...rest, file: each.document.file, stay, draft: false, from: each.from, key: keyOf(use, each) };
  });

const print = printer("metric");

const amountText = (amount: number, unit: string): string =>
  print(amount, KINDS[unit as keyof typeof KINDS] ?? "count");

const START = { line: 1, column: 1, endLine: 1, endColumn: 1 };

const about = ({ of, path }: Entered): Pick<Check, "rule" | "level" | "at" | "sources"> => ({
  rule: RULES[of],
  level: "shall",
  at: { path, ...START },
  sources: [],
});

function failed(own: Entered, worst: WorstUse, allowed: number): Check {
  const { unit } = own;
  const list = worst.by.map(({ file, path, amount }) => `${file} (${path}) ${amountText(amount, unit)}`).join(", ");
  const what = own.which === undefined ? own.name : `${own.name} (${own.which})`;
  return {
    ...about(own),
    outcome: "fails",
    measured: { value: worst.total, unit },
    allowed: { value: allowed, unit, sense: "at most" },
    says: `Over these repositories ${amountText(worst.total, unit)} of ${what} are used on ${worst.day}: ${list}; allowed are ${amountText(allowed, unit)}.`,
    mend: "Move one of the builds, or take something else for it.",
  };
}

function clashed(own: Entered, other: Entered): Check {
  const twice = (own.ports ?? []).filter((port) => other.ports?.includes(port));
  return {
    ...about(own),
    outcome: "fails",
    says: `Port ${twice.join(" and port ")} of ${own.name} (${own.which}) is also used by ${other.file} (${other.path}).`,
    mend: "Give every chain of both builds a port of its own, or take another processor for one of them.",
  };
}

function untold(own: Entered, files: readonly string[]): Check {
  const list = files.join(", ");
  return {
    ...about(own),
    outcome: "open",
    says: `How much of ${own.name} is used over these repositories cannot be told: something is missing, or guessed, in ${list}.`,
    mend: `Write it down in ${list}.`,
  };
}

/** What becomes of one document's uses of one thing; nothing where nobody of another repository uses it on its days. */
function judged(own: readonly Entered[], others: readonly Entered[]): readonly Check[] {
  const [first] = own as [Entered];
  if (!others.some(({ from }) => from !== first.from)) return [];
  const clash = others.find(
    ({ from, ports = [] }) => from !== first.from && ports.some((port) => first.ports?.includes(port)),
  );
  if (clash) return [clashed(first, clash)];
  const worst = worstTogether(own, others);
  const { allowed } = first;
  if (!worst) return [];
  if (allowed !== undefined && worst.total > allowed * (1 + 1e-9)) return [failed(first, worst, allowed)];
  const unsure = others.filter(({ amounts, guess }) => guess === true || Object.keys(amounts).length === 0);
  const files = [...new Set([...unsure, ...(allowed === undefined ? own : [])].map(({ file }) => file))];
  return files.length === 0 ? [] : [untold(first, files)];
}

/** Everything that is used, by what it is of and by day; books are kept under the keys of this page. */
function ledgerOver(entered: ReadonlyMap<string, readonly Entered[]>): Ledger {
  const dwellers = [...entered].flatMap(([path, uses]) => {
    const from = uses.map(({ stay }) => stay?.from ?? "").sort()[0];
    const ends = uses.map(({ stay }) => stay?.to);
    const to = ends.includes(undefined) ? undefined : ends.sort().at(-1);
    return from === undefined ? [] : [{ path, venue: undefined, stay: { from, ...(to === undefined ? {} : { to }) } }];
  });
  return new Ledger(dwellers, (path) =>
    (entered.get(path) ?? []).map(({ of, key: name, file, stay }) => ({
      ...{ of, name, path: "", amounts: {}, unit: "", file, stay, draft: false },
    })),
  );
}

/** Checks on what documents of several repositories share, by the document's file. */
export function sharedOver(all: readonly Recorded[]): ReadonlyMap<string, readonly Check[]> {
  const entered = new Map(all.map((each) => [each.document.file, enteredOf(each)]));
  const ledger = ledgerOver(entered);
  const found = new Map<string, readonly Check[]>();
  for (const [file, uses] of entered) {
    const keys = new Map(uses.map((each) => [each.key, each]));
    const checks = [...keys].flatMap(([key, { of, stay }]) => {
      const near = new Set(ledger.on(sharedKey({ of, name: key }), stay, file).map((each) => each.file));
      const others = [...near].flatMap((other) => (entered.get(other) ?? []).filter((each) => each.key === key));
      return judged(
        uses.filter((each) => each.key === key),
        others,
      );
    });
    if (checks.length > 0) found.set(file, checks);
  }
  return found;
}
