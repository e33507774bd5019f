import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { starterFiles, starterPages } from "./starter-files.js";

const pages = starterPages();
const html = [...pages].filter(([path]) => path.endsWith(".html"));
const links = (text: string): readonly string[] =>
  [...text.matchAll(/ href="([^"]*)"/gu)].map(([, href]) => href ?? "");

/** What is wrong with a link of a page; undefined when it leads somewhere. */
function wrong(page: string, href: string): string | undefined {
  if (/^(?:https?|mailto):/u.test(href)) return undefined;
  if (/^[a-z]+:|^\//iu.test(href)) return `${href} does not work from a folder`;
  const [path, fragment] = href.split("#") as [string, string | undefined];
  const target = path === "" ? page : posix.join(posix.dirname(page), path);
  if (!pages.has(target)) return `${href}: there is no ${target}`;
  return fragment && !pages.get(target)?.includes(` id="${fragment}"`) ? `${href}: there is no such place` : undefined;
}

describe("every local link leads somewhere", () => {
  it.each(notEmpty(html))("%s", (page, text) => {
    expect(links(text).length).toBeGreaterThan(3);
    expect(
      links(text)
        .map((href) => wrong(page, href))
        .filter((each) => each !== undefined),
    ).toEqual([]);
  });
});

describe("links between documents", () => {
  it("become links between their sheets", () => {
    const banner = starterFiles.documents.find(({ path }) => path === "builds/over-stage-banner.md");
    expect(banner?.text).toContain("(small-screen.md)");
    expect(pages.get("builds/over-stage-banner.html")).toContain('href="../builds/small-screen.html"');
  });
});
