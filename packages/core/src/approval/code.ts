import { sha256 } from "@noble/hashes/sha2.js";
import { utf8ToBytes } from "@noble/hashes/utils.js";

/** Crockford's base32: no I, L, O and U, which are taken for 1, 0 and V. */
const LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const LENGTH = 8;

/**
 * Forty bits of a SHA-256 as two groups of four letters, `7K3M-92QF`: short enough to be read out, and long enough that
 * no two versions of a document meet in one by chance. It tells that something was changed, not who changed it: whoever
 * may write the document may write the code, too.
 */
export function codeOf(text: string): string {
  const bytes = sha256(utf8ToBytes(text));
  let bits = 0n;
  for (const byte of bytes.slice(0, (LENGTH * 5) / 8)) bits = (bits << 8n) | BigInt(byte);
  const letters = Array.from({ length: LENGTH }, (_, index) => LETTERS[Number((bits >> BigInt(35 - 5 * index)) & 31n)]);
  return `${letters.slice(0, 4).join("")}-${letters.slice(4).join("")}`;
}

/** A code as people write it, the way it is printed: small letters, blanks, O for 0, I and L for 1. */
export const codeRead = (text: string): string =>
  text
    .toUpperCase()
    .replace(/[\s-]/gu, "")
    .replaceAll("O", "0")
    .replace(/[IL]/gu, "1")
    .replace(/^(.{4})(.{4})$/u, "$1-$2");
