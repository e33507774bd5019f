import { sourceTable } from "./source.js";

export const riggingSources = sourceTable({});
