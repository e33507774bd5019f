import { resolve } from "node:path";
import { type Data, type InspectionRecord, readYaml, validate } from "@plumbmark/core";
import { readText } from "../source/read-text.js";
import { Trouble } from "../terminal/trouble.js";
import { findKeyTwice } from "./key-twice.js";
import { asSecond } from "./second-record.js";

/** A record that is read from a file. */
export interface NamedRecord {
  /** What its documents are listed under: the file's name without `.json`. */
  readonly name: string;
  readonly record: InspectionRecord;
}

const MEND = "Make it with `plumbmark inspect --as json`.";

/** Whether a text is how JSON may begin: what the engine then misses is its end. */
function mayBegin(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch (error) {
    const { message } = error as Error;
    const position = /position (\d+)/u.exec(message)?.[1];
    return position === undefined ? /end of JSON/u.test(message) : Number(position) >= text.length;
  }
}

/** Where a text stops being JSON: the engine does not always tell. */
function placeIn(text: string): string {
  let [good, bad] = [0, text.length + 1];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (mayBegin(text.slice(0, middle))) good = middle;
    else bad = middle;
  }
  return placeAt(text, good);
}

function placeAt(text: string, offset: number): string {
  const before = text.slice(0, offset).split("\n");
  return `${before.length}:${(before.at(-1) as string).length + 1}`;
}

function refuseTwice(path: string, text: string): void {
  const twice = findKeyTwice(text);
  if (!twice) return;
  const key = JSON.stringify(twice.key.length > 60 ? `${twice.key.slice(0, 60)}…` : twice.key);
  throw new Trouble(
    `${path}:${placeAt(text, twice.at)}: the key ${key} stands here a second time. Which of the two counts cannot be told.`,
    MEND,
  );
}

function parsed(path: string, text: string): Data {
  try {
    return JSON.parse(text) as Data;
  } catch {
    throw new Trouble(`${path}:${placeIn(text)}: this is no JSON from here on.`, MEND);
  }
}

/** @throws Trouble with the place of what keeps a file from being a record. */
export async function readRecord(folder: string, path: string): Promise<NamedRecord> {
  const read = await readText(resolve(folder, path), LARGEST_RECORD);
  if ("problem" in read) throw new Trouble(`${path}: ${read.problem.says}`, read.problem.mend);
  const data = asSecond(parsed(path, read.text));
  refuseTwice(path, read.text);
  const [mistake] = validate("record", { data, places: new Map(), keys: new Map(), mistakes: [] });
  if (mistake) {
    // JSON is YAML, and only that reader keeps places; it is asked only when there is something to find.
    const again = readYaml(read.text);
    const [found] = validate("record", { ...again, data: asSecond(again.data) });
    const { line, column } = (found ?? mistake).place;
    throw new Trouble(`${path}:${line}:${column}: this is no record of an inspection. ${mistake.says}`, MEND);
  }
  const name = path.replace(/^.*[\\/]/u, "").replace(/\.json$/iu, "");
  return { name, record: data as unknown as InspectionRecord };
}

const LARGEST_RECORD = 256_000_000;
