import { type Build, is, may, nobodyIn, open, type Person, person, type RawCheck, whoMay } from "@plumbmark/kit";

interface Named {
  readonly path: string;
  readonly act: "prepare" | "approve";
  /** `prepared`, `approved`. */
  readonly did: string;
}

const quoted = (text: string): string => `\`${text}\``;

/** Who is named at a path, for whoever compares. */
export const personAt = (build: Build, path: string): Person | undefined => person(build.reader.text(path));

/** Where whoever approved it is named: `approved-by` alone is of no content, and still tells who it was. */
export const approverPath = ({ reader }: Build): string => (!reader.has("approved") ? "approved-by" : "approved.by");

const notNamed = (build: Build, { path, did }: Named): RawCheck => {
  const text = build.reader.text(path);
  const why = text === undefined ? undefined : nobodyIn(text);
  return open(
    { path: text === undefined ? "status" : path, label: build.label },
    {
      says: `The build does not say who ${did} it${text === undefined ? "" : `: \`${path}\` is ${quoted(text)}, which ${why ?? "names nobody"}`}.`,
      mend: `Write \`${path}\` with the name of a person once it has been done.`,
      needs: [path],
    },
  );
};

/** That somebody is named, and may do what they did. */
export function* named(build: Build, who: Named): Iterable<RawCheck> {
  const { path, act, did } = who;
  const found = personAt(build, path);
  if (!found) {
    yield notNamed(build, who);
    return;
  }
  const { standard } = build.context;
  const holds = may(standard, found, act);
  const those = whoMay(standard, act)?.map(quoted).join(", ");
  yield is(
    { path, label: build.label },
    {
      holds,
      says: holds ? `${found.name} ${did} it.` : `${found.name} ${did} it, and the house standard does not let them.`,
      mend: those
        ? `Have it ${did} by somebody who may: ${those}.`
        : `Let somebody ${act} under \`people\` in the house standard.`,
    },
  );
}
