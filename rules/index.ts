import type { Rule } from "@plumbmark/kit";
import lockingOverhead from "./connectors/locking-overhead/rule.js";
import chainLength from "./data/chain-length/rule.js";
import dataFedOnce from "./data/fed-once/rule.js";
import hopLength from "./data/hop-length/rule.js";
import portLoad from "./data/port-load/rule.js";
import frontMatter from "./document/front-matter/rule.js";
import identity from "./document/identity/rule.js";
import parts from "./document/parts/rule.js";
import quotedValues from "./document/quoted-values/rule.js";
import sections from "./document/sections/rule.js";
import waivers from "./document/waivers/rule.js";
import batch from "./panels/batch/rule.js";
import circuitLoad from "./power/circuit-load/rule.js";
import powerFedOnce from "./power/fed-once/rule.js";
import runCurrent from "./power/run-current/rule.js";
import voltageDrop from "./power/voltage-drop/rule.js";
import pointLoad from "./rigging/point-load/rule.js";
import ratedHardware from "./rigging/rated-hardware/rule.js";
import suspendedWeight from "./rigging/suspended-weight/rule.js";

/** The built-in rules, in the order a build is inspected. */
export const rules: readonly Rule[] = [
  circuitLoad,
  runCurrent,
  voltageDrop,
  powerFedOnce,
  suspendedWeight,
  pointLoad,
  ratedHardware,
  lockingOverhead,
  batch,
  chainLength,
  portLoad,
  hopLength,
  dataFedOnce,
  frontMatter,
  parts,
  quotedValues,
  sections,
  waivers,
  identity,
];
