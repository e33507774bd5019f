import chromium from "@sparticuz/chromium";
import { chromium as driver } from "playwright-core";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  export interface ProvidedContext {
    /** Where the one browser of all tests is reached. */
    readonly browser: string;
  }
}

/** Starts the one browser that all tests of a site connect to; ends it after the last of them. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  // No other arguments: those the package proposes switch off what keeps file:// pages apart.
  // There is no screen to draw on, and a process that draws for none takes a seventh of the time.
  const args = ["--no-sandbox", "--disable-gpu", "--disable-software-rasterizer"];
  const server = await driver.launchServer({ executablePath: await chromium.executablePath(), args });
  project.provide("browser", server.wsEndpoint());
  return () => server.close();
}
