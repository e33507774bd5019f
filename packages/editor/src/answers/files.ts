import { type OpenRepository, stockFiles, surveyKind } from "@plumbmark/core";
import { isWish } from "./wishes.js";
import type { FileKind } from "./zone.js";

/** The files of a repository with what they are. */
export function filesOf({
  files,
}: OpenRepository): readonly { readonly path: string; readonly text: string; readonly kind: FileKind }[] {
  // The texts of many documents are read when they are looked at.
  const of = (kind: FileKind, list: readonly { readonly path: string; readonly text: string }[]) =>
    list.map((file) => ({
      path: file.path,
      kind,
      get text(): string {
        return file.text;
      },
    }));
  return [
    ...of("build", files.documents),
    ...of("survey", files.surveys ?? []),
    ...of("wish", files.wishes ?? []),
    ...of("parts", files.parts),
    ...of("stock", stockFiles(files)),
    ...of("house standard", [...(files.houseStandard ? [files.houseStandard] : []), ...(files.folderStandards ?? [])]),
  ];
}

/** What a file that is in no list yet would be, by its name and text. */
export function kindOfText(path: string, text: string): FileKind {
  if (!/\.ya?ml$/iu.test(path)) return surveyKind(text) === "other" ? "build" : "survey";
  if (/(?:^|\/)house-standard\.yaml$/u.test(path)) return "house standard";
  if (/(?:^|\/)stock\.yaml$/u.test(path)) return "stock";
  return isWish(text) ? "wish" : "parts";
}
