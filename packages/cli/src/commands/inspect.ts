import { join } from "node:path";
import type { InspectionRecord } from "@plumbmark/core";
import type { Engine, InspectRequest, InspectResult } from "../engine/engine.js";
import { type Scope, scopeSince, stagedScope } from "../git/scope.js";
import { prefixOf } from "../git/top.js";
import { gnuPieces } from "../report/gnu.js";
import { markdownPieces } from "../report/markdown.js";
import { recordPieces, together } from "../report/pieces.js";
import { sarifPieces } from "../report/sarif.js";
import { textPieces } from "../report/text.js";
import { NOT_A_BUILD } from "../repository/build-document.js";
import type { FileSource } from "../source/source.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";
import { withChangesSince } from "./changed-since.js";
import { compareRevision, compareStandards, isStandard } from "./inspect-against.js";
import { watch } from "./watch.js";

export interface InspectCommandOptions {
  readonly as: "text" | "json" | "sarif" | "gnu" | "markdown";
  /** Of the program, for forms that name it. */
  readonly version: string;
  readonly every?: true;
  readonly standard?: string;
  readonly staged?: true;
  readonly since?: string;
  readonly against?: string;
  /** False with `--no-plugins`. */
  readonly plugins?: boolean;
  readonly watch?: true;
}

const NOTHING = "No build document was touched, and none is concerned.\n";

/** Exit status of an inspection that could not be carried out. */
const CANNOT = 2;

function refuseContradictions({ staged, since, against, watch: isWatching }: InspectCommandOptions): void {
  const isChange = staged || since !== undefined;
  if (isWatching && (isChange || against !== undefined))
    throw new Trouble("`--watch` looks at what lies on the disk.", "Leave `--staged`, `--since` and `--against` out.");
  if (staged && since !== undefined)
    throw new Trouble("`--staged` and `--since` do not go together.", "Ask for one of them.");
}

/** What the inspection is about, when it is not about everything. */
function scopeOf({ staged, since }: InspectCommandOptions, folder: string): Promise<Scope> | undefined {
  if (staged) return stagedScope(folder);
  return since === undefined ? undefined : scopeSince(folder, since);
}

/** Part of the inspection could not be carried out when a plugin failed, whatever the rest came to. */
function statusOf({ documents, totals }: InspectionRecord, warn: (text: string) => void): number {
  const failed = documents
    .flatMap(({ checks }) => checks)
    .filter(({ rule, outcome }) => rule === "plugin.failed" && outcome === "fails");
  if (failed.length === 0) return totals["not-ready"] > 0 ? 1 : 0;
  const plugins = [...new Set(failed.map(({ from }) => from))].join(", ");
  warn(`plumbmark: ${plugins} failed; the record says where, under plugin.failed. Everything else was inspected.\n`);
  return CANNOT;
}

async function piecesOf(
  { root, rules, record }: InspectResult,
  { as, version, every, staged, since }: InspectCommandOptions,
  { width, colour }: CommandContext,
): Promise<Iterable<string>> {
  if (as === "json") return recordPieces(record);
  if (as === "sarif") return sarifPieces({ record, rules, version, prefix: await prefixOf(root) });
  if (as === "gnu") return gnuPieces(record);
  if (as === "markdown") return markdownPieces(record);
  if (record.documents.length === 0) return [NOTHING];
  return textPieces(record, { width, colour, every: every === true, brief: staged === true || since !== undefined });
}

/** The result with what was changed since documents were approved, by the state that was inspected. */
async function sinceApproved(
  result: InspectResult,
  { standard }: InspectCommandOptions,
  { today }: CommandContext,
  source: FileSource | undefined,
): Promise<InspectResult> {
  const { root, record } = result;
  if (!record.documents.some(({ approval }) => approval?.state === "changed")) return result;
  return { ...result, record: await withChangesSince(record, { root, standard, today, source }) };
}

/** Prints the report; gives the exit status. */
async function report(result: InspectResult, options: InspectCommandOptions, context: CommandContext): Promise<number> {
  for (const other of result.leftAlone) context.warn(`${other}: left alone. ${NOT_A_BUILD}\n`);
  const forms = { json: "json", sarif: "json", text: "report", gnu: "text", markdown: "text" } as const;
  const form = forms[options.as];
  for (const piece of together(await piecesOf(result, options, context))) context.print(piece, form);
  return statusOf(result.record, context.warn);
}

/** Inspects documents and prints the report; gives the exit status, and tells `found` the root of the docs repository. */
export async function inspectCommand(
  paths: readonly string[],
  options: InspectCommandOptions,
  context: CommandContext,
  engine: Engine,
  found: (root: string) => void = () => undefined,
): Promise<number> {
  refuseContradictions(options);
  const { folder, today, warn } = context;
  const { standard, plugins, against, as, every = false } = options;
  const request: InspectRequest = { folder, paths, standard, today, plugins, warn, every };
  const scope = await scopeOf(options, folder);
  if (scope && against !== undefined)
    throw new Trouble("`--against` compares whole editions.", "Leave `--staged` and `--since` out.");
  if (against !== undefined && !isStandard(against))
    return statusOf(await compareRevision(against, request, as, context, engine), warn);
  const inspected = engine.inspect({ ...request, scope });
  const result = await inspected
    .then((came) => (against === undefined ? sinceApproved(came, options, context, scope?.after) : came))
    .finally(() => scope?.end?.());
  found(result.root);
  if (against === undefined) return report(result, options, context);
  await compareStandards(against, result.record, request, as, context, engine);
  return statusOf(result.record, warn);
}

/** Inspects documents and prints the report again after every change until it is ended; gives the last exit status. */
export async function watchCommand(...given: Parameters<typeof inspectCommand>): Promise<number> {
  const [paths, options, context, engine] = given;
  let root = context.folder;
  const once = () =>
    inspectCommand(paths, options, context, engine, (found) => {
      root = found;
    });
  let status = await once();
  context.warn("Watching; stop with Ctrl-C.\n");
  await watch(root, join(root, ".git"), context, async () => {
    status = CANNOT;
    status = await once();
  });
  return status;
}
