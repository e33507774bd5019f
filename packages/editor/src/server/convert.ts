import type { Place } from "@plumbmark/core";
import {
  type CodeAction,
  CodeActionKind,
  type CompletionItem,
  CompletionItemKind,
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentSymbol,
  type Position,
  type Range,
  SymbolKind,
  type TextEdit,
} from "vscode-languageserver/node.js";
import type { Action, CursorPoint, Finding, OutlineEntry, Suggestion } from "../answers/index.js";

// Places count lines and columns from 1, positions of the protocol from 0; both count UTF-16 code units.

export const rangeOf = ({ line, column, endLine, endColumn }: Place): Range => ({
  start: { line: line - 1, character: column - 1 },
  end: { line: endLine - 1, character: endColumn - 1 },
});

export const cursorPointOf = ({ line, character }: Position): CursorPoint => ({
  line: line + 1,
  column: character + 1,
});

const WEIGHTS = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
} as const;

/** @param page where the rule of a finding is explained, from the root of the repository */
export const diagnosticOf = (
  { place, weight, rule, says, related }: Finding,
  uriOf: (path: string) => string,
  page?: string,
): Diagnostic => ({
  range: rangeOf(place),
  severity: WEIGHTS[weight],
  code: rule,
  ...(page === undefined ? {} : { codeDescription: { href: uriOf(page) } }),
  source: "plumbmark",
  message: says,
  ...(related.length === 0
    ? {}
    : {
        relatedInformation: related.map((each) => ({
          location: { uri: uriOf(each.path), range: rangeOf(each.place) },
          message: each.says,
        })),
      }),
});

const KINDS = {
  key: CompletionItemKind.Property,
  name: CompletionItemKind.Reference,
  word: CompletionItemKind.EnumMember,
  quantity: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
} as const;

export const completionItemOf = ({ label, kind, place, text, about, told, first }: Suggestion): CompletionItem => ({
  label,
  kind: KINDS[kind],
  sortText: `${first ? 0 : 1}${label}`,
  filterText: label,
  textEdit: { range: rangeOf(place), newText: text },
  ...(about === undefined ? {} : { detail: about }),
  ...(told === undefined ? {} : { documentation: { kind: "markdown" as const, value: told } }),
});

export const textEditsOf = ({ changes }: Action): TextEdit[] =>
  changes.map(({ place, text }) => ({ range: rangeOf(place), newText: text }));

export const actionOf = (action: Action, uri: string, diagnostics: readonly Diagnostic[]): CodeAction => ({
  title: action.title,
  kind: action.kind === "mend" ? CodeActionKind.QuickFix : CodeActionKind.RefactorRewrite,
  edit: { changes: { [uri]: textEditsOf(action) } },
  ...(diagnostics.length > 0 ? { diagnostics: [...diagnostics] } : {}),
  ...(action.sure ? { isPreferred: true } : {}),
});

const SYMBOLS = { group: SymbolKind.Namespace, thing: SymbolKind.Object, section: SymbolKind.String } as const;

export const symbolOf = ({ name, about, kind, whole, place, inside }: OutlineEntry): DocumentSymbol => ({
  name,
  ...(about === "" ? {} : { detail: about }),
  kind: SYMBOLS[kind],
  range: rangeOf(whole),
  selectionRange: rangeOf(place),
  children: inside.map(symbolOf),
});
