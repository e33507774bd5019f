import { createHash } from "node:crypto";

/** Git's name of a content: its SHA-1 with its length before it. */
export function gitBlobName(bytes: Uint8Array): string {
  return createHash("sha1").update(`blob ${bytes.length}\0`).update(bytes).digest("hex");
}
