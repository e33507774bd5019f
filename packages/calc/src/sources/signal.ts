import { sourceTable } from "./source.js";

export const signalSources = sourceTable({});
