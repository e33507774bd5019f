import { readQuantity } from "@plumbmark/calc";
import type { HouseStandardSettings } from "@plumbmark/core";

/** What a plugin may take. */
export interface Limits {
  /** Seconds for loading it, and for each rule on each document. */
  readonly time: number;
  /** Bytes besides what its process starts with. */
  readonly memory: number;
}

const MEGABYTE = 1_000_000;
const BYTES: Readonly<Record<string, number>> = { MB: MEGABYTE, GB: 1000 * MEGABYTE };

/** The limits of a house standard: 5 s and 256 MB unless it says otherwise. */
export function limitsOf(settings: HouseStandardSettings): Limits {
  const { time = "5 s", memory = "256 MB" } = settings["plugin-limits"] ?? {};
  const read = readQuantity(time, ["time"]);
  const [number, unit] = memory.split(" ");
  return { time: read.ok ? read.quantity.value : 5, memory: Number(number) * (BYTES[unit ?? ""] ?? MEGABYTE) };
}

/** `5 s`, `256 MB`, as messages say it. */
export const timeText = ({ time }: Limits): string => `${time} s`;
export const memoryText = ({ memory }: Limits): string => `${memory / MEGABYTE} MB`;
