import { electricalSources } from "./electrical.js";
import { generalSources } from "./general.js";
import { riggingSources } from "./rigging.js";
import { signalSources } from "./signal.js";
import type { Source } from "./source.js";

/** Every source used, by id. Editions of a standard are separate entries. */
export const sources = { ...generalSources, ...electricalSources, ...riggingSources, ...signalSources } as const;

/** Id of a source: a key of `sources`. */
export type SourceId = keyof typeof sources;

export const sourceOf = (id: SourceId): Source => sources[id];
