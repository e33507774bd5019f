import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";

/** One of each kind of file, as small as it can be. */
export const SMALL = {
  "builds/a.md": "---\nbuild: a\ntitle: A\nstatus: draft\n---\n\n# A\n",
  "parts/p.yaml": "tile: {kind: panel, size: 500 mm x 500 mm, pixels: 160 x 160, mass: 7.9 kg}\n",
  "stock.yaml": "lots:\n  one: {panel: tile, batch: b1, count: 4}\n",
  "house-standard.yaml": "house-standard: House\npractice: us\nstock: stock.yaml\nsections: []\n",
} as const;

/** A docs repository of them, with other files besides or instead; its one draft is ready. */
export function small(more: Readonly<Record<string, Uint8Array | string>> = {}): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-small-")));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, content] of Object.entries({ ...SMALL, ...more })) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}
