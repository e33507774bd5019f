import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { commands, type ExtensionContext, workspace } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node.js";
import { commandFor } from "./server.js";

/** More docs repositories than anybody opens at once; each is told apart by the server. */
const MOST = 50;

let client: LanguageClient | undefined;

async function start(extension: string): Promise<void> {
  const standards = await workspace.findFiles("**/house-standard.yaml", "**/node_modules/**", MOST);
  const module = commandFor(
    standards.map(({ fsPath }) => dirname(fsPath)),
    extension,
    existsSync,
  );
  const run = { module, args: ["language-server"], transport: TransportKind.stdio };
  client = new LanguageClient("plumbmark", "Plumbmark", run, {
    documentSelector: ["markdown", "yaml"].map((language) => ({ scheme: "file", language })),
  });
  await client.start();
}

async function stop(): Promise<void> {
  const running = client;
  client = undefined;
  await running?.stop();
}

export async function activate({ extensionPath, subscriptions }: ExtensionContext): Promise<void> {
  subscriptions.push(
    commands.registerCommand("plumbmark.startAnew", async () => {
      await stop();
      await start(extensionPath);
    }),
  );
  await start(extensionPath);
}

export const deactivate = stop;
