// Lists the rules from their folders, so that a new rule needs no line anywhere else.
import { existsSync, readdirSync } from "node:fs";
import { top } from "./steps.mjs";

const folders = (path) =>
  readdirSync(path, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== "node_modules" && entry.name !== "dist")
    .map((entry) => entry.name)
    .sort();

/** Text of rules/index.ts. */
export function rulesIndex() {
  const found = folders(`${top}rules`).flatMap((topic) =>
    folders(`${top}rules/${topic}`)
      .filter((name) => existsSync(`${top}rules/${topic}/${name}/rule.ts`))
      .map((name) => ({
        from: `./${topic}/${name}/rule.js`,
        as: `${topic}-${name}`.replace(/-(.)/g, (_, letter) => letter.toUpperCase()),
      })),
  );
  const imports = found.map(({ from, as }) => `import ${as} from "${from}";`);
  return `// Generated from the folders of the rules; run \`npm run build\` after adding one.\nimport type { Rule } from "@plumbmark/kit";\n${imports.join("\n")}\n\n/** The built-in rules, by topic and name. */\nexport const rules: readonly Rule[] = [\n${found.map(({ as }) => `  ${as},`).join("\n")}\n];\n`;
}
