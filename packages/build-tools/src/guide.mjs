// Puts the guide into the site's sources: the site is made without a disk.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { top } from "./steps.mjs";

const FROM = `${top}docs-site/guide/`;
const FOLDER = `${top}docs-site/src/generated/`;
const TO = `${FOLDER}guide.ts`;

export function generateGuide() {
  const pages = readdirSync(FROM)
    .filter((file) => file.endsWith(".md"))
    .sort()
    .map((file) => ({ name: file.slice(0, -3), text: readFileSync(FROM + file, "utf8") }));
  const text = `// Generated from docs-site/guide/*.md.\nexport const guide: readonly { readonly name: string; readonly text: string }[] =\n  ${JSON.stringify(pages)};\n`;
  mkdirSync(FOLDER, { recursive: true });
  if (!existsSync(TO) || readFileSync(TO, "utf8") !== text) writeFileSync(TO, text);
}
