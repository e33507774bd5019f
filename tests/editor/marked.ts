import { readdirSync, readFileSync } from "node:fs";
import { type RepositoryFiles, type SourceFile, surveyKind } from "@plumbmark/core";
import { starterRepository } from "@plumbmark/starter";
import { Client, positionOf } from "./client.js";

const read = (path: string): SourceFile => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const folder = (name: string): readonly SourceFile[] =>
  readdirSync(`${starterRepository}/${name}`)
    .sort()
    .map((file) => read(`${name}/${file}`));

const surveys = folder("venues").filter(({ text }) => surveyKind(text) === "survey");
const standard = read("house-standard.yaml");
/** The starter as it is shipped: its builds take what they can from surveys. Its plugin is left out. */
export const shipped: RepositoryFiles = {
  houseStandard: { ...standard, text: standard.text.replace(/^rules-from: .*\n/mu, "") },
  parts: folder("parts"),
  stock: read("stock.yaml"),
  surveys,
  papers: readdirSync(`${starterRepository}/letters`).map((name) => `letters/${name}`),
  documents: folder("builds"),
};
const wishes = folder("wishes");

export const shippedText = (path: string): string => {
  const { documents, parts, stock, houseStandard } = shipped;
  const all = [...documents, ...parts, ...surveys, ...wishes, ...(stock ? [stock] : [])];
  const found = [...all, ...(houseStandard ? [houseStandard] : [])].find((file) => file.path === path);
  if (!found) throw new Error(`the starter has no ${path}`);
  return found.text;
};

export interface Marking {
  readonly path: string;
  readonly from: string;
  /** What is put in its place; `|` is where the cursor is, unless `at` says so. */
  readonly to: string;
  /** Behind which words of the changed text the cursor is. */
  readonly at?: string;
  readonly end?: string;
}

/** A text of the starter with words in place of others, and where the cursor is in it. */
export function marked({ path, from, to, at, end = "\n" }: Marking) {
  const was = shippedText(path);
  if (!was.includes(from)) throw new Error(`${path} has no ${from}`);
  const mark = "\uE000";
  const put = was.replace(from, () => to.replace("|", at === undefined ? mark : "|"));
  const whole = at === undefined ? put : put.replace(at, () => at + mark);
  const text = whole.replaceAll("\n", end);
  const offset = text.indexOf(mark);
  if (offset < 0) throw new Error(`${path} has no cursor`);
  const without = text.replace(mark, "");
  return { text: without, position: positionOf(without, offset) };
}

let client: Client | undefined;

/** Asks at the mark; the file was sound in the editor before it was changed, and is closed again. */
export async function askedAt<Answer>(method: string, marking: Marking, more: object = {}): Promise<Answer> {
  client ??= await Client.of({ files: shipped }, false);
  const { path } = marking;
  const { text, position } = marked(marking);
  const was = shippedText(path);
  await client.open(path, was);
  client.change(path, 0, was.length, text);
  const textDocument = { uri: client.uri(path) };
  const answer = await client.request<Answer>(method, { textDocument, position, ...more });
  client.connection.sendNotification("textDocument/didClose", { textDocument });
  return answer;
}
