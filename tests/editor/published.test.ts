import { expect, test } from "vitest";
import type { DocumentLink } from "vscode-languageserver-protocol";
import { starter } from "../documents/repository.js";
import { notEmpty } from "../run/not-empty.js";
import { starterPages } from "../site/starter-files.js";
import { Client, textAt, uriOf } from "./client.js";

const BANNER = "builds/over-stage-banner.md";
const text = starter().documents.find(({ path }) => path === BANNER)?.text ?? "";
const site = new Map([...starterPages()].map(([path, page]) => [`site/${path}`, page]));
const pages = new Set([...site.keys()].filter((path) => path.endsWith(".html")));

const opened = async (published: boolean, of = text) => {
  const client = await Client.of({ files: starter(), ...(published ? { pages } : {}) });
  return { client, found: await client.open(BANNER, of) };
};
const linksOf = async (client: Client): Promise<readonly DocumentLink[]> =>
  (await client.request<DocumentLink[] | null>("textDocument/documentLink", {
    textDocument: { uri: uriOf(BANNER) },
  })) ?? [];

/** What a reader sees at a place of a page. */
function seenAt(html: string, id: string): string | undefined {
  const from = html.indexOf(`id="${id}"`);
  if (from < 0) return undefined;
  return html.slice(html.indexOf(">", from) + 1, from + 400).replaceAll(/<[^>]*>/gu, " ");
}

test("a figure, a schedule and a drawing lead to where they stand on the published sheet", async () => {
  const { client } = await opened(true);
  const links = (await linksOf(client)).filter(({ target }) => target?.includes("#"));
  expect(links.length).toBeGreaterThan(10);
  for (const { range, target } of notEmpty(links)) {
    const [uri = "", fragment = ""] = (target ?? "").split("#");
    const page = site.get(uri.slice(uriOf("").length));
    const written = textAt(text, range);
    const seen = seenAt(String(page ?? ""), decodeURIComponent(fragment));
    expect(seen, `${written} at ${target}`).toBeDefined();
    // The words between the brackets in front of the link are what is quoted.
    const words =
      text
        .slice(0, text.indexOf(`](${written})`))
        .split("[")
        .at(-1) ?? "";
    if (fragment.startsWith("Quoted-") && text.split(`](${written})`).length === 2)
      expect(seen?.replaceAll(/\s+/gu, " "), written).toContain(words);
  }
  const kinds = new Set(links.map(({ target }) => target?.split("#")[1]?.split("-")[0]));
  expect([...kinds].sort()).toEqual(["Drawn", "Quoted", "Schedule"]);
});

test("a finding leads to the page of its rule, where one is published", async () => {
  const worse = text.replace("    rows: 1\n", "    rows: 3\n");
  expect(worse).not.toBe(text);
  const { found } = await opened(true, worse);
  const led = found.filter(({ code }) => String(code).includes("."));
  expect(led.length).toBeGreaterThan(3);
  for (const { code, codeDescription } of notEmpty(led)) {
    expect(codeDescription?.href).toBe(uriOf(`site/rules/${code}.html`));
    expect(site.has(`site/rules/${code}.html`)).toBe(true);
  }
  const { client, found: alone } = await opened(false, worse);
  expect(alone.filter(({ codeDescription }) => codeDescription !== undefined)).toEqual([]);
  expect((await linksOf(client)).filter(({ target }) => target?.includes("/site/"))).toEqual([]);
});

test("the figure at which a finding turns is told once nobody has typed for a moment", async () => {
  const { client, found } = await opened(true, text.replace("trim: 11 ft", "trim: 6 ft"));
  const says = (list: typeof found): string => list.map(({ message }) => message).join("\n");
  expect(says(found)).not.toMatch(/It holds with `/u);
  await client.until(BANNER, (list) => /It holds with `/u.test(says(list)));
});
