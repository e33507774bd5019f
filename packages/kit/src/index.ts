export { agrees, atLeast, atMost, is, open } from "./checks.js";
export { rule } from "./rule.js";
export type { Bar, Build, Cable, Chain, Circuit, End, Face, Hang, Joint, Level, Panel, RawCheck, Rule, RuleContext, Run, Setting, Thing } from "@plumbmark/core";
