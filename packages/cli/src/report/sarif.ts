import { createHash } from "node:crypto";
import type { InspectionRecord, MendEntry, Rule } from "@plumbmark/core";
import { showTurn } from "./check.js";
import type { Check } from "./form.js";
import { jsonPieces } from "./pieces.js";

/** SARIF 2.1.0, OASIS Standard. */
const SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

export interface SarifInput {
  readonly record: InspectionRecord;
  readonly rules: readonly Rule[];
  readonly version: string;
  /** From the top of the git repository to the docs repository, `docs/` or nothing. */
  readonly prefix: string;
}

/** shall → error, should → warning, note → note. */
const LEVELS = { shall: "error", should: "warning", note: "note" } as const;
/** A waived check is a failure with a suppression. */
const KINDS = { holds: "pass", open: "open", fails: "fail", waived: "fail" } as const;

const uri = (path: string): string => path.split("/").map(encodeURIComponent).join("/");

/** A rule without code, or one that stands for a failed plugin, is known by its checks only. */
function descriptors(record: InspectionRecord, rules: readonly Rule[]): readonly { readonly id: string }[] {
  const known = new Map(
    rules.map(({ id, states, why, judged, level }) => [
      id,
      {
        id,
        shortDescription: { text: states },
        ...(why ? { fullDescription: { text: why } } : {}),
        ...(judged ? { help: { text: judged } } : {}),
        ...(level === "none"
          ? { defaultConfiguration: { enabled: false } }
          : { defaultConfiguration: { level: LEVELS[level] } }),
      },
    ]),
  );
  const met = new Set<string>();
  for (const { checks } of record.documents) for (const { rule } of checks) met.add(rule);
  const others = [...met].filter((id) => !known.has(id)).sort();
  return [...known.values(), ...others.map((id) => ({ id }))];
}

/** A column just after the last one, as here; a place without an extent is one character. */
const region = ({ at }: Check): object => ({
  startLine: at.line,
  startColumn: at.column,
  ...(at.endLine > at.line || at.endColumn > at.column ? { endLine: at.endLine, endColumn: at.endColumn } : {}),
});

function message(check: Check): string {
  const { says, mend = "", outcome } = check;
  if (outcome === "holds" || outcome === "waived") return says;
  const turn = showTurn(check);
  const told = turn === "" ? "" : `${turn[0]?.toUpperCase()}${turn.slice(1)}.`;
  return [says, told, mend].filter((part) => part !== "").join(" ");
}

/** A fix is made as a whole: the sure mends together, and each of the others by itself (3.27.30, 3.55). */
function fixes({ mends = [] }: Check, artifactLocation: object): object {
  const sure = mends.filter((each) => each.sure);
  const groups = [...(sure.length > 0 ? [sure] : []), ...mends.filter((each) => !each.sure).map((each) => [each])];
  if (groups.length === 0) return {};
  const described = (group: readonly MendEntry[]): string =>
    group
      .map(({ was, becomes }) =>
        becomes === ""
          ? `Take \`${was.trim()}\` out.`
          : was === ""
            ? `Write \`${becomes.trim()}\`.`
            : `Write \`${becomes}\` in place of \`${was}\`.`,
      )
      .join(" ");
  const replacement = ({ at, becomes }: MendEntry): object => ({
    // Nothing is taken out where both columns are the same: the text is put in there (3.57.3).
    deletedRegion: { startLine: at.line, startColumn: at.column, endLine: at.endLine, endColumn: at.endColumn },
    insertedContent: { text: becomes },
  });
  return {
    fixes: groups.map((group) => ({
      description: { text: described(group) },
      artifactChanges: [{ artifactLocation, replacements: group.map(replacement) }],
    })),
  };
}

const suppressions = ({ waiver }: Check): object =>
  waiver
    ? {
        suppressions: [
          {
            kind: "inSource",
            status: "accepted",
            justification: `${waiver.because} (${waiver.by}, until ${waiver.until})`,
          },
        ],
      }
    : {};

/** Stays the same when lines move: the file, the rule, the path in the document, and which of several there it is. */
function fingerprints(file: string, checks: readonly Check[]): readonly string[] {
  const seen = new Map<string, number>();
  return checks.map(({ rule, at }) => {
    const key = JSON.stringify([file, rule, at.path]);
    const twin = seen.get(key) ?? 0;
    seen.set(key, twin + 1);
    return createHash("sha256").update(`${key}${twin}`).digest("hex").slice(0, 32);
  });
}

function* results({ record, prefix }: SarifInput, rules: ReadonlyMap<string, number>): Iterable<object> {
  for (const { file, checks } of record.documents) {
    const prints = fingerprints(file, checks);
    const artifactLocation = { uri: uri(prefix + file), uriBaseId: "SRCROOT" };
    for (const [at, check] of checks.entries())
      yield {
        ruleId: check.rule,
        ruleIndex: rules.get(check.rule),
        kind: KINDS[check.outcome],
        level: KINDS[check.outcome] === "fail" ? LEVELS[check.level] : "none",
        message: { text: message(check) },
        locations: [
          {
            physicalLocation: {
              artifactLocation,
              region: region(check),
            },
          },
        ],
        partialFingerprints: { "plumbmarkCheck/v1": prints[at] },
        ...fixes(check, artifactLocation),
        ...suppressions(check),
        properties: { level: check.level, outcome: check.outcome, path: check.at.path },
      };
  }
}

/**
 * The documents with their verdicts (3.24): open checks have no level of their own in SARIF, so that a document which is
 * not ready for what cannot be told would look as one of which nothing is said.
 */
const artifacts = ({ record, prefix }: SarifInput): readonly object[] =>
  record.documents.map(({ file, verdict }) => ({
    location: { uri: uri(prefix + file), uriBaseId: "SRCROOT" },
    roles: ["analysisTarget"],
    properties: { verdict },
  }));

/** The record as a SARIF log, result by result. Places count UTF-16 code units. */
export function sarifPieces(input: SarifInput): Iterable<string> {
  const listed = descriptors(input.record, input.rules);
  const index = new Map(listed.map(({ id }, at) => [id, at]));
  const driver = { name: "Plumbmark", semanticVersion: input.version, rules: listed };
  const run = { tool: { driver }, columnKind: "utf16CodeUnits", invocations: [{ executionSuccessful: true }] };
  const documents = artifacts(input);
  const log = { $schema: SCHEMA, version: "2.1.0", runs: [{ ...run, artifacts: documents, results: [] }] };
  return jsonPieces(log, { name: "results", depth: 3, items: results(input, index) });
}
