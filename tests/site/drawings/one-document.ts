import { type Drawing, drawingsOf, svgFile } from "@plumbmark/docs-site";
import { inspected } from "./repository.js";

export interface Drawn {
  readonly name: string;
  readonly file: string;
  readonly drawing: Drawing;
  readonly text: string;
}

const made = new Map<string, readonly Drawn[]>();

/** The drawings of one document, as they are written to their files; the other documents are not looked at. */
export function drawnOf(file: string): readonly Drawn[] {
  const own =
    made.get(file) ??
    drawingsOf(inspected(file)).map((drawing) => ({
      name: `${file} ${drawing.name}`,
      file,
      drawing,
      text: svgFile(drawing),
    }));
  made.set(file, own);
  return own;
}
