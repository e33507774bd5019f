import { sourceTable } from "./source.js";

export const generalSources = sourceTable({
  arithmetic: { document: "arithmetic", says: "follows from the figures shown", basis: "definition" },
  geometry: { document: "geometry", says: "follows from the shape", basis: "definition" },
  practice: { document: "common practice", says: "common practice, no source", basis: "practice" },
  part: { document: "parts catalogue", says: "the maker's figure, as entered in the catalogue", basis: "definition" },
  house: { document: "house standard", says: "the integrator's own setting", basis: "definition" },
  "astm-b258": {
    document: "ASTM B258",
    says: "gauge: diameter 0.005 in × 92^((36 − n) ÷ 39)",
    basis: "published",
  },
  "ucum-2.2": { document: "UCUM", edition: "2.2 (2024)", says: "exact unit factors", basis: "published" },
});
