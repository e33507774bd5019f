/** Offsets of the YAML between the fences. */
export interface FrontMatter {
  readonly from: number;
  readonly to: number;
}

/** Where the YAML between the fences stands, found without reading the Markdown; undefined without front matter. */
export function frontMatterOf(text: string): FrontMatter | undefined {
  const opening = /^\uFEFF?---[ \t]*(?:\r\n|\n|\r)/u.exec(text)?.[0];
  if (opening === undefined) return undefined;
  const fence = /(?:^|\r\n|\n|\r)---[ \t]*(?=\r|\n|$(?![\s\S]))/gu;
  // The line end before the closing fence may be that of the opening one, when nothing stands between them.
  fence.lastIndex = opening.trimEnd().length;
  const closing = fence.exec(text);
  if (!closing) return undefined;
  return { from: opening.length, to: Math.max(opening.length, closing.index) };
}

/** Whether two texts have the same front matter: it then stands at the same places of both. */
export function isSameFrontMatter(one: string, other: string): boolean {
  const [own, others] = [frontMatterOf(one), frontMatterOf(other)];
  return own !== undefined && own.to === others?.to && one.slice(0, own.to) === other.slice(0, own.to);
}
