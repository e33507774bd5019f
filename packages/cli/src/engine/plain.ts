import { openRepository, outlineOf } from "@plumbmark/core";
import { draftedWish, promisesIn, stockShapes } from "@plumbmark/docs-site";
import { type Engine, engineOf, type Means } from "./engine.js";
import { sheetWriter } from "./sheet-writer.js";

/** No cache, no workers: everything is done anew, one thing after another. */
export const plainMeans: Means = {
  cacheFor: () => undefined,
  outline: async ({ documents }) =>
    documents.map(({ path, text }) => ({ path, text, outline: outlineOf({ path, text }) })),
  judge: async (files, rules, options) => openRepository(files, rules, options).all(),
  draftWishes: async ({ wishes, input }) => wishes.map((file) => draftedWish(file, input)),
  shapes: async ({ input }) => stockShapes(input, promisesIn(input.files)),
  makeSheets: async ({ input, onFile }) => {
    const write = sheetWriter(input);
    const made = input.files.documents.map((file) => {
      const sheet = write(file);
      for (const _ of sheet.put) onFile();
      return sheet;
    });
    return {
      made,
      anew: input.files.documents.map(({ path }) => path),
      unshown: made.flatMap(({ unshown }) => unshown),
    };
  },
};

/** The engine whose results those of others are held against. */
export const plainEngine = (): Engine => engineOf(plainMeans);
