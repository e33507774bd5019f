import { type Data, readYaml } from "@plumbmark/core";
import type { Mapping } from "../data.js";

/** A group or list that fits on a line of this stands on one. */
const LINE = 110;

const isGroup = (data: Data): data is Mapping => data !== null && typeof data === "object" && !Array.isArray(data);

const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** A single value; a text that would be read as something else stands in quotes. */
function scalar(data: Data, flow: boolean): string {
  if (typeof data !== "string") return String(data);
  if (/[\n\r]/u.test(data)) return JSON.stringify(data);
  const read = readYaml(flow ? `[${data}]` : `k: ${data}`);
  const [same] = flow ? [(read.data as readonly Data[] | null)?.[0]] : [(read.data as Mapping | null)?.k];
  const whole = read.mistakes.length === 0 && same === data && (!flow || (read.data as readonly Data[]).length === 1);
  return whole ? data : quoted(data);
}

function flowText(data: Data): string {
  if (Array.isArray(data)) return `[${data.map(flowText).join(", ")}]`;
  if (!isGroup(data)) return scalar(data, true);
  return `{${Object.entries(data)
    .map(([key, value]) => `${key}: ${flowText(value)}`)
    .join(", ")}}`;
}

/** Groups whose entries are things with names: each has lines of its own, as a person would write them. */
const OPEN =
  /^(?:faces|power|data|picture|rigging|power\.(?:circuits|runs|supplies)|data\.chains|rigging\.bars|rigging\.bars\.[^.]+|rigging\.bars\.[^.]+\.hangs|rigging\.letter\.points|faces\.[^.]+|power\.(?:circuits|runs)\.[^.]+|data\.chains\.[^.]+|picture\.(?:path|at)|picture\.at\.[^.]+(?:\.parts)?|rigging\.letter)$/u;

function lines(data: Mapping, indent: string, path: string): readonly string[] {
  return Object.entries(data).flatMap(([key, value]) => {
    const here = path === "" ? key : `${path}.${key}`;
    const flat = flowText(value);
    if (value === null || typeof value !== "object") return [`${indent}${key}: ${scalar(value, false)}`];
    if (!OPEN.test(here) && indent.length + key.length + 2 + flat.length <= LINE) return [`${indent}${key}: ${flat}`];
    if (isGroup(value)) return [`${indent}${key}:`, ...lines(value, `${indent}  `, here)];
    return [`${indent}${key}:`, ...(value as readonly Data[]).map((item) => `${indent}  - ${flowText(item)}`)];
  });
}

/**
 * Front matter as a person would have typed it: what has a name on lines of its own, what is small on one.
 * Groups on the outermost level that hold more than a line are set apart by an empty one.
 */
export function frontMatterText(data: Mapping): string {
  const blocks = Object.entries(data).map(([key, value]) => lines({ [key]: value }, "", ""));
  let text = "";
  let before = 1;
  for (const [index, block] of blocks.entries()) {
    if (index > 0 && (block.length > 1 || before > 1)) text += "\n";
    text += `${block.join("\n")}\n`;
    before = block.length;
  }
  return text;
}
