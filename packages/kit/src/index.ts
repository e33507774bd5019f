export type {
  AssemblyPart,
  Bar,
  Build,
  Cable,
  Chain,
  Circuit,
  End,
  Face,
  Hang,
  Joint,
  Level,
  Panel,
  RawCheck,
  Rule,
  RuleContext,
  Run,
  Setting,
  SlackCases,
  Thing,
} from "@plumbmark/core";
export { agrees, atLeast, atMost, is, open } from "./checks.js";
export { rule } from "./rule.js";
