import { brotliDecompressSync } from "node:zlib";
import type { System } from "@plumbmark/calc";
import type { CheckEntry } from "@plumbmark/core";
import { packedExamples } from "../../generated/examples.js";

/** A document that shows what a rule does, with the checks that came out when it was judged. */
export interface Example {
  /** How it comes out, and in some words why: `fails-too-many`. */
  readonly name: string;
  readonly files: readonly { readonly path: string; readonly text: string }[];
  readonly system: System;
  /** The practice it was judged by, whether it writes one or not. */
  readonly practice?: string;
  readonly checks: readonly CheckEntry[];
}

interface Examples {
  /** The day they were judged for. */
  readonly day: string;
  readonly rules: Readonly<Record<string, readonly Example[]>>;
  /** By kind of file and general path, `power.circuits.*.breaker`: rules that read a field, and a value it was given. */
  readonly fields: {
    readonly readBy: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;
    readonly values: Readonly<Record<string, Readonly<Record<string, string>>>>;
  };
}

let read: Examples | undefined;

/** The examples of every built-in rule; they were run by its own code when Plumbmark was built. */
export function examples(): Examples {
  read ??= JSON.parse(brotliDecompressSync(Buffer.from(packedExamples, "base64")).toString("utf8")) as Examples;
  return read;
}
