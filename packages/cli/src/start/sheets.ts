import { load } from "./script.js";

await load().program.sheets();
