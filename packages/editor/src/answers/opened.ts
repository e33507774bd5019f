import type { System } from "@plumbmark/calc";
import type { Build, DocumentEntry, OpenRepository } from "@plumbmark/core";
import type { FileKind } from "./zone.js";

/** One file of an opened repository, as its text is now. */
export interface OpenedFile {
  readonly repository: OpenRepository;
  readonly path: string;
  readonly kind: FileKind;
  /** The text as it is in the editor. */
  readonly text: string;
  /** The last model of a build document that could be read; undefined before there was one, and of other files. */
  readonly model: SoundModel | undefined;
  /** Pages of the site the repository was published to, from its root; none where nobody looked. */
  readonly pages?: ReadonlySet<string>;
}

/** A model of a document whose front matter could be read. */
export interface SoundModel {
  readonly build: Build;
  readonly system: System;
  /** The text it was made from. */
  readonly text: string;
}

/** Whether what is told of the model is of an earlier text. */
export const isOlder = ({ model, text }: OpenedFile): boolean => model !== undefined && model.text !== text;

/** What is told where a model is of an earlier text. */
export const OLDER = "As of the last text that could be read; the front matter cannot be read as it is now.";

/** What was found in a file, and the other files it is about. */
export interface FoundFile {
  readonly path: string;
  readonly entry: DocumentEntry;
}
