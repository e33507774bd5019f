import { type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { starterRepository } from "@plumbmark/starter";
import { onTestFinished } from "vitest";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node.js";
import { Client } from "../client.js";

const COMMAND = fileURLToPath(new URL("../../../packages/cli/dist/plumbmark.js", import.meta.url));

/** The starter on the disk, without its plugin: what rules of plugins come to arrives later and is tested elsewhere. */
export function starterOnDisk(): string {
  const root = realpathSync(mkdtempSync(join(tmpdir(), "plumbmark-live-")));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  cpSync(starterRepository, root, { recursive: true });
  rewrite(root, "house-standard.yaml", /^rules-from: .*\n/mu, "");
  return root;
}

export const textOn = (root: string, path: string): string => readFileSync(join(root, path), "utf8");

/** Writes other words in place of some in a file on the disk. */
export function rewrite(root: string, path: string, from: string | RegExp, to: string): void {
  const was = textOn(root, path);
  const is = was.replace(from, () => to);
  if (is === was) throw new Error(`${path} has no ${from}`);
  writeFileSync(join(root, path), is);
}

export interface Live {
  readonly client: Client;
  readonly server: ChildProcessWithoutNullStreams;
  /** The status it ends with. */
  readonly ended: Promise<number | null>;
  /** Tells, as an editor does, that files were changed on the disk. */
  readonly tell: (...paths: readonly string[]) => void;
}

/** A client of the built server, in a process of its own. */
export async function live(root: string): Promise<Live> {
  const server = spawn(process.execPath, [COMMAND, "language-server"], { cwd: root });
  const ended = new Promise<number | null>((resolve) => server.on("exit", resolve));
  const connection = createMessageConnection(
    new StreamMessageReader(server.stdout),
    new StreamMessageWriter(server.stdin),
  );
  onTestFinished(async () => {
    connection.dispose();
    server.kill();
    await ended;
  });
  const watching = { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } };
  const client = await Client.over(connection, root, watching);
  const tell = (...paths: readonly string[]): void =>
    void connection.sendNotification("workspace/didChangeWatchedFiles", {
      changes: paths.map((path) => ({ uri: client.uri(path), type: 2 })),
    });
  return { client, server, ended, tell };
}
