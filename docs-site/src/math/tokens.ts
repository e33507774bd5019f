export interface Token {
  readonly type: "number" | "name" | "sign";
  readonly text: string;
  /** Nothing stands between it and the token before. */
  readonly close: boolean;
}

const NUMBER = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?[′°%]?|^\d+(?:\.\d+)?[′°%]?/u;
const NAME = /^(?!Σ)\p{L}[\p{L}\p{Nd}_]*(?:\/\p{L}+)?/u;
const SIGN = /^[+−×÷=(),√Σ²³⁴^;≤≥<>|]/u;

/** The tokens of an expression as a handbook prints it; undefined where something else stands in it. */
export function tokensOf(text: string): readonly Token[] | undefined {
  const tokens: Token[] = [];
  let rest = text.trimStart();
  let close = true;
  while (rest !== "") {
    const found = (["number", "name", "sign"] as const)
      .map((type) => ({ type, text: { number: NUMBER, name: NAME, sign: SIGN }[type].exec(rest)?.[0] }))
      .find((each) => each.text !== undefined);
    if (found?.text === undefined) return undefined;
    tokens.push({ type: found.type, text: found.text, close });
    const after = rest.slice(found.text.length);
    rest = after.trimStart();
    close = after === rest;
  }
  return tokens;
}
