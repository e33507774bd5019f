import type { Data } from "../../document/yaml/yaml.js";
import type { DesignSource } from "../reading/design-source.js";

/** A device with a supply of its own, and where it stands. */
export interface Active {
  readonly path: string;
  readonly label: string;
  readonly stands: string | undefined;
  readonly overhead: boolean | undefined;
}

const KINDS: readonly string[] = ["processor", "converter", "source"];

/** The processor, and the sources and converters of the picture path; cables are none. */
export function activesOf(build: DesignSource): readonly Active[] {
  const { reader } = build;
  const path = reader.data("picture.path");
  const count = Array.isArray(path) ? (path as readonly Data[]).length : 0;
  const paths = ["data.processor", ...Array.from({ length: count }, (_, index) => `picture.path.${index + 1}`)];
  return paths.flatMap((each) => {
    const part = reader.parts.get(reader.text(`${each}.part`) ?? "");
    const overhead = reader.data(`${each}.overhead`);
    return part && KINDS.includes(part.kind)
      ? [
          {
            path: each,
            label: part.name,
            stands: reader.text(`${each}.place`),
            overhead: typeof overhead === "boolean" ? overhead : undefined,
          },
        ]
      : [];
  });
}
