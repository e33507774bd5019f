// Every property with full counts, every step of every writing, and what needs the network: about half an hour.
import { vitest } from "./vitest.mjs";

process.env.PLUMBMARK_DEEP = "1";
process.exitCode = vitest(process.argv.slice(2));
