import type { CancellationToken } from "vscode-languageserver/node.js";
import type { InSteps, OpenedFile } from "../answers/index.js";
import type { Session } from "./session.js";

/** Whose file a question is about, and how what takes longer is worked out. */
export interface Question {
  readonly session: Session;
  readonly path: string;
  readonly uriOf: (path: string) => string;
  readonly inSteps: <T>(steps: InSteps<T>) => Promise<T>;
}

/** Answers about a file at its newest text; nothing where it belongs to no docs repository. */
export type About = <Answer>(
  uri: string,
  token: CancellationToken,
  answer: (file: OpenedFile, asked: Question) => Answer | Promise<Answer>,
) => Promise<Answer | null>;
