import { type CodeAction, CodeActionKind, type CodeActionParams, type Position } from "vscode-languageserver/node.js";
import {
  type CursorPoint,
  guessActions,
  mendActions,
  type OpenedFile,
  publishedRule,
  venueActions,
} from "../answers/index.js";
import { actionOf, cursorPointOf, diagnosticOf, textEditsOf } from "./convert.js";
import type { Question } from "./question.js";

type Edit = ReturnType<typeof textEditsOf>[number];

/** Edits of which no two overlap: an editor takes no others. */
function apartEdits(edits: readonly Edit[]): Edit[] {
  const isBefore = (one: Position, other: Position): boolean =>
    one.line < other.line || (one.line === other.line && one.character <= other.character);
  const sorted = [...edits].sort((one, other) => (isBefore(one.range.start, other.range.start) ? -1 : 1));
  const kept: Edit[] = [];
  for (const each of sorted) {
    const last = kept.at(-1);
    if (!last || isBefore(last.range.end, each.range.start)) kept.push(each);
  }
  return kept;
}

/** What can be done at a range of a file. */
export function actionsFor(
  file: OpenedFile,
  { session, path, uriOf }: Pick<Question, "session" | "path" | "uriOf">,
  { textDocument: { uri }, range, context }: CodeActionParams,
): CodeAction[] {
  const [from, to]: readonly CursorPoint[] = [cursorPointOf(range.start), cursorPointOf(range.end)];
  if (!from || !to) return [];
  session.turn(path);
  const findings = session.findings(path);
  const here = findings.filter(({ place }) => place.line <= to.line && place.endLine >= from.line);
  const wants = (kind: string): boolean =>
    !context.only || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
  const mends = [...mendActions(file, here), ...venueActions(file, here)].map((action) => {
    const { finding } = action;
    const own = finding ? [diagnosticOf(finding, uriOf, publishedRule(session, finding.rule))] : [];
    return actionOf(action, uri, own);
  });
  const guesses = guessActions(file, from).map((action) => actionOf(action, uri, []));
  const sure = mendActions(file, findings).filter((action) => action.sure);
  const all =
    sure.length === 0
      ? []
      : [
          {
            title: "Put right everything here that has one answer",
            kind: CodeActionKind.SourceFixAll,
            edit: { changes: { [uri]: apartEdits(sure.flatMap(textEditsOf)) } },
          },
        ];
  return [...mends, ...guesses, ...all].filter(({ kind }) => wants(kind ?? ""));
}
