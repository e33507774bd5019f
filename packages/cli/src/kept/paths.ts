import type { RepositoryFiles } from "@plumbmark/core";

/** Everything a link may lead to. */
export const pathsOf = ({
  stock,
  houseStandard,
  documents,
  others,
  parts,
  folderStandards,
}: RepositoryFiles): readonly string[] =>
  [stock, houseStandard, ...documents, ...(others ?? []), ...parts, ...(folderStandards ?? [])].flatMap((file) =>
    file ? [file.path] : [],
  );
