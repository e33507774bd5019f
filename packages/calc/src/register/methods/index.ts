import type { Method } from "../method.js";
import { generalMethods } from "./general.js";
import { powerMethods } from "./power.js";
import { riggingMethods } from "./rigging.js";
import { signalMethods } from "./signal.js";

/** Every function of this package that computes and is no single formula. */
export const methods: readonly Method[] = [...generalMethods, ...powerMethods, ...riggingMethods, ...signalMethods];
