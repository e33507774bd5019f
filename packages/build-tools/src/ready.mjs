// Installs what is missing: node_modules is made anew when it does not match the lock file.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("../../../", import.meta.url));
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node ${process.versions.node} is too old; Plumbmark needs Node 20.19 or newer.`);
  process.exit(2);
}
const mark = `${top}node_modules/.plumbmark-lock`;
const lock = createHash("sha256")
  .update(readFileSync(`${top}package-lock.json`))
  .digest("hex");
const installed = existsSync(mark) && readFileSync(mark, "utf8") === lock;
if (!installed) {
  console.error("Installing what is missing (npm ci)…");
  const npm = process.env.npm_execpath;
  const [command, args] = npm ? [process.execPath, [npm, "ci"]] : ["npm", ["ci"]];
  const { status } = spawnSync(command, [...args, "--no-audit", "--no-fund"], { cwd: top, stdio: "inherit" });
  if (status !== 0) {
    console.error(
      "The install did not succeed. Check that the npm registry can be reached, then run the command again.",
    );
    process.exit(1);
  }
  writeFileSync(mark, lock);
}
