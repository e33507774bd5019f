// Writes the output in the tour of README.md anew: each block that follows a `plumbmark` command is what it prints.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { top } from "./steps.mjs";

const STARTER = "packages/starter/repository";
const SHOWN = /```\nplumbmark (.+)\n```\n\n```\n[\s\S]*?\n```/gu;

/** What a command prints; the tour's own copy of the starter is the starter itself. */
function output(command) {
  const words = command.replaceAll("my-builds", STARTER).split(" ");
  const { stdout, stderr, status } = spawnSync(process.execPath, [`${top}packages/cli/dist/plumbmark.js`, ...words], {
    cwd: top,
    encoding: "utf8",
  });
  if (status === 2 || status === null) throw new Error(`plumbmark ${command}: ${stderr}`);
  return stdout.trimEnd();
}

const fence = "```";
const readme = readFileSync(`${top}README.md`, "utf8");
const written = readme.replace(
  SHOWN,
  (_, command) => `${fence}\nplumbmark ${command}\n${fence}\n\n${fence}\n${output(command)}\n${fence}`,
);
writeFileSync(`${top}README.md`, written);
