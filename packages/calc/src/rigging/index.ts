export * from "./beam/beam.js";
export * from "./beam/deflection.js";
export * from "./beam/envelope.js";
export * from "./beam/slack.js";
export * from "./beam/solve.js";
