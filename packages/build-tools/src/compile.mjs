// Runs the command line once over the starter, and keeps beside it what V8 has made of its code by then.
import { load, ownCode } from "../../cli/dist/start/script.js";
import { top } from "./steps.mjs";

const { program, keep } = load();
const words = ["inspect", "--no-cache", "--no-plugins", "packages/starter/repository"];
const around = {
  folder: top,
  today: "2027-01-01",
  width: 80,
  colour: 0,
  print: () => undefined,
  warn: () => undefined,
};
const status = await program.command(words, around);
if (status === 2) process.exitCode = 2;
else keep(ownCode());
