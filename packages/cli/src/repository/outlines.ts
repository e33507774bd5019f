import type { DocumentFile, Outline } from "@plumbmark/core";

/** A document whose content has a name of git's, so that its results can be looked up. */
export interface NamedFile extends DocumentFile {
  readonly id?: string;
}

/** An outline that is not of any one place: the same content elsewhere promises the same. */
export type PlacelessOutline = Omit<Outline, "path">;

export const withoutPlace = ({ path: _, promises, ...rest }: Outline): PlacelessOutline => ({
  ...rest,
  promises: promises.map((each) => ({ ...each, file: "" })),
});

export const outlineAt = ({ promises, ...rest }: PlacelessOutline, path: string): Outline => ({
  ...rest,
  path,
  promises: promises.map((each) => ({ ...each, file: path })),
});

/** A spread would read a text that is only read when it is looked at. */
export const fileWithOutline = (file: NamedFile, outline: Outline): NamedFile =>
  Object.defineProperties(
    {},
    { ...Object.getOwnPropertyDescriptors(file), outline: { value: outline, enumerable: true } },
  ) as NamedFile;
