import { sourceTable } from "./source.js";

export const electricalSources = sourceTable({});
