/**
 * HTML and SVG as text that is safe by construction: words and values are escaped where they are put in, and only the
 * functions here make markup. One spelling serves both a page and an XML file.
 */
export class Html {
  constructor(readonly text: string) {}
}

/** What stands in an element: markup, words, lists of them, or nothing. */
export type Content = Html | string | undefined | readonly Content[];

type Value = string | number | boolean | undefined | readonly string[];

/** Attributes by name, `ariaLabel` for `aria-label`; one that is undefined or false is left out. */
export type Attributes = Readonly<Record<string, Value>>;

const SIGNS: Readonly<Record<string, string>> = { "&": "&#x26;", "<": "&#x3C;", '"': "&#x22;", "]]>": "]]&#x3E;" };
const sign = (each: string): string => SIGNS[each] as string;

// The end of what XML calls a character data section may stand in no text (XML 1.0, 2.4).
const escapedText = (text: string): string => (/[&<]|\]\]>/u.test(text) ? text.replace(/[&<]|\]\]>/gu, sign) : text);
const escapedValue = (text: string): string => (/[&<"]/u.test(text) ? text.replace(/[&<"]/gu, sign) : text);

/** Names written in another way than their words with dashes. */
const names = new Map([
  ["viewBox", "viewBox"],
  ["patternUnits", "patternUnits"],
  ["className", "class"],
]);

/** @throws TypeError for what can be no name: an author's words never are. */
function nameOf(name: string): string {
  const known = names.get(name);
  if (known !== undefined) return known;
  if (!/^[a-z][a-zA-Z0-9-]*$/u.test(name)) throw new TypeError(`${name} cannot be the name of an attribute.`);
  const written = name.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`);
  names.set(name, written);
  return written;
}

/** Hundredths of a millimetre are finer than any printer. */
export const num = (value: number): number => Math.round(value * 100) / 100 || 0;

function attributeText(name: string, value: Value, round: boolean): string {
  if (value === undefined || value === false) return "";
  const written = nameOf(name);
  if (value === true) return ` ${written}`;
  if (typeof value === "number") return ` ${written}="${round && !written.startsWith("data-") ? num(value) : value}"`;
  return ` ${written}="${escapedValue(typeof value === "string" ? value : value.join(" "))}"`;
}

function attributesText(attributes: Attributes, round: boolean): string {
  let text = "";
  for (const name in attributes) text += attributeText(name, attributes[name], round);
  return text;
}

/** Content as text; nothing is the empty text. */
export function textOf(content: Content): string {
  if (content === undefined) return "";
  if (typeof content === "string") return escapedText(content);
  if (content instanceof Html) return content.text;
  let text = "";
  for (const each of content as readonly Content[]) text += textOf(each);
  return text;
}

/**
 * Content in one piece, for what goes into more than one file: an engine keeps joined texts as the pieces they are made
 * of, and would put them together anew for each.
 */
export function whole(content: Content): Html {
  const text = textOf(content);
  // To look at its first sign it has to be put together.
  /^</u.test(text);
  return new Html(text);
}

const VOID = new Set(["br", "img", "input", "link", "meta"]);

const isContent = (some: Attributes | Content): some is Content =>
  some === undefined || typeof some === "string" || Array.isArray(some) || some instanceof Html;

/** An element of HTML, with attributes and content or with content alone. Names are ours, never an author's. */
export function h(name: string, first?: Attributes | Content, second?: Content): Html {
  const [attributes, content] = isContent(first) ? ["", first] : [attributesText(first, false), second];
  const start = `<${name}${attributes}>`;
  return new Html(VOID.has(name) ? start : `${start}${textOf(content)}</${name}>`);
}

/** An element of SVG; measures are rounded, what a figure means (`data-`) is not. */
export function s(name: string, attributes: Attributes, content?: Content): Html {
  const [start, text] = [`<${name}${attributesText(attributes, true)}`, textOf(content)];
  return new Html(text === "" ? `${start}/>` : `${start}>${text}</${name}>`);
}
