import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import { pathToFileURL } from "node:url";
import { publish, writeSite } from "@plumbmark/docs-site";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { inject } from "vitest";
import type {} from "../run/browser.js";
import { starterPages } from "./starter-files.js";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css",
  ".js": "text/javascript",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".csv": "text/csv",
};

/** A site in a folder and behind a server, with a browser to look at it; what went wrong in it is noted. */
export interface Shown {
  readonly folder: string;
  readonly paths: readonly string[];
  readonly browser: Browser;
  /** Everything a page asked for that does not lie in the site, and every message of the console. */
  readonly troubles: string[];
  readonly fileUrl: (path: string) => string;
  readonly serverUrl: (path: string) => string;
  readonly page: (options?: BrowserContextOptions) => Promise<Page>;
  readonly close: () => Promise<void>;
}

const serve = (folder: string): Promise<Server> =>
  new Promise((resolve) => {
    const server = createServer(({ url = "/" }, response) => {
      const path = join(folder, normalize(decodeURIComponent(new URL(url, "http://localhost").pathname)));
      try {
        const text = readFileSync(path);
        response.writeHead(200, { "content-type": TYPES[extname(path)] ?? "application/octet-stream" }).end(text);
      } catch {
        response.writeHead(404).end();
      }
    });
    server.listen(0, "127.0.0.1", () => resolve(server));
  });

/** The site of the starter, made once for all that look at it in one process. */
export const showStarter = (): Promise<Shown> => showPages(starterPages());

export const show = (input: Parameters<typeof publish>[0]): Promise<Shown> => showPages(publish(input));

async function showPages(pages: ReturnType<typeof publish>): Promise<Shown> {
  const top = mkdtempSync(join(tmpdir(), "site-"));
  const folder = join(top, "site");
  await writeSite(pages, folder);
  const server = await serve(folder);
  const { port } = server.address() as AddressInfo;
  const origin = `http://127.0.0.1:${port}/`;
  const root = `${pathToFileURL(folder).href}/`;
  const browser = await chromium.connect(inject("browser"));
  const troubles: string[] = [];
  return {
    folder,
    paths: [...pages.keys()],
    browser,
    troubles,
    fileUrl: (path) => root + path,
    serverUrl: (path) => origin + path,
    page: async (options = {}) => {
      const page = await browser.newPage(options);
      page.on("request", (request) => {
        const url = request.url();
        if (!url.startsWith(origin) && !url.startsWith(root)) troubles.push(`asks for ${url}`);
      });
      page.on("console", (message) => {
        // A server is asked for an icon of its own accord by the browser; there is none.
        if (!message.location().url.endsWith("/favicon.ico")) troubles.push(`${page.url()} says ${message.text()}`);
      });
      page.on("pageerror", (error) => troubles.push(`${page.url()} fails with ${error.message}`));
      page.on("dialog", (dialog) => {
        troubles.push(`${page.url()} opens a dialog: ${dialog.message()}`);
        void dialog.dismiss();
      });
      return page;
    },
    close: async () => {
      await browser.close();
      await new Promise((resolve) => server.close(resolve));
      rmSync(top, { recursive: true });
    },
  };
}
