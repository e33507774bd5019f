import { join } from "node:path";
import type { InspectionRecord, Rule } from "@plumbmark/core";
import { recording } from "../answers/recording.js";
import { NOT_A_BUILD } from "../files/build-document.js";
import { fromRoot } from "../files/find-files.js";
import type { Repository } from "../files/repository.js";
import { type Scope, scopeSince, stagedScope } from "../git/scope.js";
import { prefixOf } from "../git/top.js";
import { inspectKept } from "../kept/inspect-kept.js";
import { type Kept, keptFor, save } from "../kept/kept.js";
import { againstText } from "../report/against-text.js";
import { gnuPieces } from "../report/gnu.js";
import { markdownPieces } from "../report/markdown.js";
import { partOf } from "../report/part-of.js";
import { recordPieces, together } from "../report/pieces.js";
import { sarifPieces } from "../report/sarif.js";
import { textPieces } from "../report/text.js";
import type { Surroundings } from "../surroundings.js";
import { Trouble } from "../trouble.js";
import { againstEntry, apartFromApprovals, changesBetween, recordBy } from "./against.js";
import { againstRevision } from "./against-revision.js";
import { withChangesSince } from "./changed-since.js";
import { inspectScope } from "./inspect-scope.js";
import { open } from "./open.js";
import { watch } from "./watch.js";

export interface InspectOptions {
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
  /** False with `--no-cache`. */
  readonly cache?: boolean;
  readonly watch?: true;
}

/** Files named on the command line that turned out to be no build documents. */
const leftAlone = ({ asked, root }: Repository, record: InspectionRecord): readonly string[] =>
  asked
    .filter(({ folder, path }) => !folder && !record.documents.some(({ file }) => file === fromRoot(root, path)))
    .map(({ written }) => written);

function refuseNothing(repository: Repository, record: InspectionRecord, others: readonly string[]): void {
  if (record.documents.length > 0) return;
  const where =
    others.length > 0
      ? others.join(", ")
      : repository.asked.map(({ written }) => written).join(", ") || repository.root;
  const patterns = repository.files.houseStandard
    ? ` The house standard looks for documents in ${repository.settings.documents.join(", ")}.`
    : "";
  throw new Trouble(`There is no build document in ${where}.${patterns}`, NOT_A_BUILD);
}

const NOTHING = "No build document was touched, and none is concerned.\n";

/** What the inspection is about, when it is not about everything. */
function scopeOf({ staged, since }: InspectOptions, folder: string): Promise<Scope> | undefined {
  if (staged && since !== undefined)
    throw new Trouble("`--staged` and `--since` do not go together.", "Ask for one of them.");
  if (staged) return stagedScope(folder);
  return since === undefined ? undefined : scopeSince(folder, since);
}

/** A house standard is a YAML file; anything else names a revision of git. */
const isStandard = (against: string): boolean => /\.ya?ml$/iu.test(against);

/** Tells which documents change verdict by another house standard; the exit status is that of the new one. */
async function compare(
  record: InspectionRecord,
  paths: readonly string[],
  { as, every, against, plugins }: InspectOptions,
  around: Surroundings,
): Promise<number> {
  const wanted = { folder: around.folder, paths, standard: against, today: around.today, plugins, warn: around.warn };
  const before = await recordBy(wanted, every === true);
  const changes = changesBetween(apartFromApprovals(record), before);
  const compared = { ...record, against: againstEntry(before, changes) };
  const pieces = as === "json" ? together(recordPieces(compared)) : [againstText(record, before, changes, around)];
  for (const piece of pieces) around.print(piece);
  return statusOf(record, around.warn);
}

/** Part of the inspection could not be carried out when a plugin failed, whatever the rest came to. */
function statusOf({ documents, totals }: InspectionRecord, warn: (text: string) => void): number {
  const failed = documents
    .flatMap(({ checks }) => checks)
    .filter(({ rule, outcome }) => rule === "plugin.failed" && outcome === "fails");
  if (failed.length === 0) return totals["not-ready"] > 0 ? 1 : 0;
  const plugins = [...new Set(failed.map(({ from }) => from))].join(", ");
  warn(`plumbmark: ${plugins} failed; the record says where, under plugin.failed. Everything else was inspected.\n`);
  return 2;
}

export interface Inspected {
  readonly root: string;
  readonly rules: readonly Rule[];
  readonly record: InspectionRecord;
}

async function formed(
  { root, rules, record }: Inspected,
  { as, version, every, staged, since }: InspectOptions,
  { width, colour }: Surroundings,
): Promise<Iterable<string>> {
  if (as === "json") return together(recordPieces(record));
  if (as === "sarif") return together(sarifPieces({ record, rules, version, prefix: await prefixOf(root) }));
  if (as === "gnu") return together(gnuPieces(record));
  if (as === "markdown") return together(markdownPieces(record));
  if (record.documents.length === 0) return [NOTHING];
  const brief = staged === true || since !== undefined;
  return together(textPieces(record, { width, colour, every: every === true, brief }));
}

/** What was changed since documents were approved, by the state that was inspected. */
async function sinceApproved(
  { root, record }: Inspected,
  { standard, staged }: InspectOptions,
  { today }: Surroundings,
) {
  if (!staged) return withChangesSince(record, { root, standard, today });
  const scope = await stagedScope(root);
  const found = await withChangesSince(record, { root, standard, today, origin: scope.after });
  scope.end?.();
  return found;
}

/** Prints the report; gives the exit status. */
async function report(found: Inspected, options: InspectOptions, around: Surroundings): Promise<number> {
  const stale = found.record.documents.some(({ approval }) => approval?.state === "changed");
  const inspected = stale ? { ...found, record: await sinceApproved(found, options, around) } : found;
  for (const piece of await formed(inspected, options, around)) around.print(piece);
  return statusOf(inspected.record, around.warn);
}

function refuseWatching({ staged, since, against, watch: watching }: InspectOptions): void {
  if (watching && (staged || since !== undefined || against !== undefined))
    throw new Trouble("`--watch` looks at what lies on the disk.", "Leave `--staged`, `--since` and `--against` out.");
}

/** Inspects documents and prints the report, again after every change when they are watched; gives the exit status. */
export async function inspectCommand(
  paths: readonly string[],
  options: InspectOptions,
  around: Surroundings,
): Promise<number> {
  refuseWatching(options);
  let root = around.folder;
  const once = (told = around) =>
    inspectOnce(paths, options, told, (found) => {
      root = found;
    });
  const taken = canBeKept(options) ? recording(around) : undefined;
  let status = await once(taken?.around);
  if (status !== CANNOT) taken?.keep(status);
  if (!options.watch) return status;
  around.warn("Watching; stop with Ctrl-C.\n");
  await watch(root, join(root, ".git"), around, async () => {
    status = CANNOT;
    status = await once();
  });
  return status;
}

const CANNOT = 2;

/** Whether an answer rests on nothing but what lies on the disk; git is asked for where it stands, too, in SARIF. */
const canBeKept = ({ watch: watching, staged, since, against, as }: InspectOptions): boolean =>
  !watching && !staged && since === undefined && (against === undefined || isStandard(against)) && as !== "sarif";

/** Inspects documents and prints the report; gives the exit status, and tells `found` the root of the docs repository. */
async function inspectOnce(
  paths: readonly string[],
  options: InspectOptions,
  around: Surroundings,
  found: (root: string) => void,
): Promise<number> {
  const scope = await scopeOf(options, around.folder);
  if (scope && options.against !== undefined)
    throw new Trouble("`--against` compares whole editions.", "Leave `--staged` and `--since` out.");
  if (scope) {
    const { standard, every, plugins, cache = true } = options;
    const { folder, today, warn } = around;
    const wanted = { folder, paths, standard, today, plugins, warn, cache, every: every === true };
    return report(await inspectScope(scope, wanted).finally(scope.end), options, around);
  }
  const { folder, today, warn } = around;
  const opening = { folder, paths, standard: options.standard, today, plugins: options.plugins, warn };
  if (options.against !== undefined && !isStandard(options.against))
    return statusOf(await againstRevision(options.against, opening, options.as, around), warn);
  let kept: Kept | undefined;
  const keptOf = (root: string) => {
    kept ??= keptFor(root, options.cache !== false);
    return kept;
  };
  const repository = await open({ ...opening, kept: keptOf });
  const { files, rules, unreadable, wants } = repository;
  found(repository.root);
  const whole = await inspectKept(files, rules, { today: around.today, every: options.every === true }, kept);
  save(kept);
  const record = partOf(whole, unreadable, (file) => !files.documents.some(({ path }) => path === file) || wants(file));
  const others = leftAlone(repository, record);
  refuseNothing(repository, record, others);
  for (const other of others) around.warn(`${other}: left alone. ${NOT_A_BUILD}\n`);
  const inspected = { root: repository.root, rules, record };
  return options.against === undefined ? report(inspected, options, around) : compare(record, paths, options, around);
}
