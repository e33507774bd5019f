import { asRead } from "./nothing-written.js";

/** A place by which things find each other: `rack A` and `Rack  a` are `rack-a`. */
export const placeName = (text: string): string =>
  asRead(text)
    .toLowerCase()
    .replace(/[\s_]+/gu, "-");
