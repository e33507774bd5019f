import {
  type CodeAction,
  type Connection,
  FoldingRangeKind,
  LSPErrorCodes,
  type Position,
  ResponseError,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver/node.js";
import {
  foldsIn,
  hintsIn,
  hoverAt,
  linksIn,
  type Mention,
  mentionAt,
  namedAt,
  type OpenedFile,
  outlineOfFile,
  refusalOf,
  sameNames,
  suggestionsAt,
} from "../answers/index.js";
import { actionsFor } from "./actions.js";
import { completionItemOf, cursorPointOf, rangeOf, symbolOf } from "./convert.js";
import type { About, Question } from "./question.js";

/** What is to be renamed is told by the text as it is. */
const renamedAt = (file: OpenedFile, position: Position): Mention | undefined =>
  mentionAt(file.repository, file, cursorPointOf(position));

const everywhere = async (file: OpenedFile, named: Mention | undefined, { inSteps }: Question) =>
  named ? inSteps(sameNames(file.repository, named)) : [];

async function rename(
  file: OpenedFile,
  named: Mention | undefined,
  to: string,
  asked: Question,
): Promise<WorkspaceEdit | null> {
  if (!named) return null;
  const all = await everywhere(file, named, asked);
  const refusal = await asked.inSteps(refusalOf(file.repository, named, all, to));
  if (refusal !== undefined) throw new ResponseError(LSPErrorCodes.RequestFailed, refusal);
  const changes: Record<string, TextEdit[]> = {};
  for (const { path, place } of all) {
    const uri = asked.uriOf(path);
    changes[uri] = [...(changes[uri] ?? []), { range: rangeOf(place), newText: to }];
  }
  return { changes };
}

function answerAtPlaces(connection: Connection, about: About): void {
  connection.onCompletion(async ({ textDocument, position }, token) =>
    about(textDocument.uri, token, (file) => suggestionsAt(file, cursorPointOf(position)).map(completionItemOf)),
  );
  connection.onHover(async ({ textDocument, position }, token) =>
    about(textDocument.uri, token, (file) => {
      const told = hoverAt(file, cursorPointOf(position));
      return told ? { contents: { kind: "markdown" as const, value: told.text }, range: rangeOf(told.place) } : null;
    }),
  );
  connection.languages.inlayHint.on(async ({ textDocument, range }, token) =>
    about(textDocument.uri, token, (file) =>
      hintsIn(file, range.start.line + 1, range.end.line + 1).map(({ place, text }) => ({
        position: rangeOf(place).start,
        label: text,
        paddingLeft: true,
      })),
    ),
  );
  connection.onCodeAction(async (params, token) =>
    about(params.textDocument.uri, token, (file, asked): CodeAction[] => actionsFor(file, asked, params)),
  );
}

function answerOnNames(connection: Connection, about: About): void {
  connection.onDefinition(async ({ textDocument, position }, token) =>
    about(textDocument.uri, token, async (file, asked) => {
      const all = await everywhere(file, namedAt(file, cursorPointOf(position)), asked);
      return all
        .filter(({ defines }) => defines)
        .map(({ path, place }) => ({ uri: asked.uriOf(path), range: rangeOf(place) }));
    }),
  );
  connection.onReferences(async ({ textDocument, position, context }, token) =>
    about(textDocument.uri, token, async (file, asked) => {
      const all = await everywhere(file, namedAt(file, cursorPointOf(position)), asked);
      return all
        .filter(({ defines }) => context.includeDeclaration || !defines)
        .map(({ path, place }) => ({ uri: asked.uriOf(path), range: rangeOf(place) }));
    }),
  );
  connection.onPrepareRename(async ({ textDocument, position }, token) =>
    about(textDocument.uri, token, async (file, asked) => {
      const named = renamedAt(file, position);
      const all = await everywhere(file, named, asked);
      const isWritten = named && all.some(({ defines }) => defines);
      return isWritten ? { range: rangeOf(named.place), placeholder: named.name } : null;
    }),
  );
  connection.onRenameRequest(async ({ textDocument, position, newName }, token) =>
    about(textDocument.uri, token, (file, asked) => rename(file, renamedAt(file, position), newName, asked)),
  );
}

function answerOnFiles(connection: Connection, about: About): void {
  connection.onDocumentSymbol(async ({ textDocument }, token) =>
    about(textDocument.uri, token, (file) => outlineOfFile(file).map(symbolOf)),
  );
  connection.onFoldingRanges(async ({ textDocument }, token) =>
    about(textDocument.uri, token, (file) =>
      foldsIn(file).map(({ from, to }) => ({ startLine: from - 1, endLine: to - 1, kind: FoldingRangeKind.Region })),
    ),
  );
  connection.onDocumentLinks(async ({ textDocument }, token) =>
    about(textDocument.uri, token, (file, { uriOf }) =>
      linksIn(file).map(({ place, target, fragment }) => ({
        range: rangeOf(place),
        target: `${uriOf(target)}${fragment === undefined ? "" : `#${encodeURIComponent(fragment)}`}`,
      })),
    ),
  );
}

/** Has what a client asks answered. */
export function answerQuestions(connection: Connection, about: About): void {
  answerAtPlaces(connection, about);
  answerOnNames(connection, about);
  answerOnFiles(connection, about);
}
