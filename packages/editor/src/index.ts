export * from "./answers/index.js";
export type { Host, RepositoryOnDisk } from "./server/host.js";
export { serve } from "./server/server.js";
export { Session } from "./server/session.js";
