import { basename, dirname, join } from "node:path";
import { Trouble } from "./trouble.js";

/** What the system refused, in words, and what to do about it. */
const BY_CODE: Readonly<Record<string, readonly [reason: string, mend: string]>> = {
  ENOSPC: ["there is no room left on the disk", "Make room there, or name a place on another disk."],
  EDQUOT: ["your share of the disk is used up", "Make room there, or name a place on another disk."],
  EFBIG: ["the file would be larger than is allowed here", "Raise the limit (`ulimit -f`), or name another place."],
  EROFS: ["the disk is read-only", "Name a place that may be written to."],
  EACCES: ["you have no right to it", "Give yourself the right, or name another place."],
  EPERM: ["the system does not permit it", "Give yourself the right, or name another place."],
  EIO: ["the disk reports a fault", "Look after the disk, or name a place on another one."],
  EMFILE: ["too many files are open", "Raise the limit (`ulimit -n`), or end other programs."],
  ENFILE: ["too many files are open", "Raise the limit of the system, or end other programs."],
  ENOMEM: ["there is no memory left", "End other programs."],
  EAGAIN: ["the system has nothing left for it", "End other programs, and try again."],
  ENOENT: ["it is not there, or was taken away meanwhile", "Look what else works in that folder, and try again."],
  ENOTDIR: ["something on the way to it is no folder", "Name another place."],
  EISDIR: ["it is a folder", "Name another place."],
  EEXIST: ["something of that name is there", "Name another place."],
  ENOTEMPTY: ["something is in that folder", "Look what else works there, and try again."],
  EBUSY: ["it is in use, or a disk of its own", "Name a folder inside it."],
  EXDEV: ["it is a disk of its own", "Name a folder inside it."],
  ELOOP: ["a link on the way to it leads back to itself", "Name another place."],
  ENAMETOOLONG: ["its name is too long", "Name a place with a shorter name."],
};

/** An error of the system: not of the documents, and no mistake of ours. */
const isOfSystem = (error: unknown): error is NodeJS.ErrnoException =>
  error instanceof Error && typeof (error as NodeJS.ErrnoException).syscall === "string" && "code" in error;

interface Fault {
  readonly reason: string;
  readonly path: string;
  readonly mend: string;
}

function faultOf(error: unknown): Fault | undefined {
  if (!isOfSystem(error)) return undefined;
  const { code = "", syscall, path = "", dest } = error as NodeJS.ErrnoException & { readonly dest?: string };
  const [reason, mend] = BY_CODE[code] ?? ["the system refused it", "Look what is the matter there, and try again."];
  return { reason: `${reason} (${code}, ${syscall})`, path: dest ?? path, mend };
}

/** What the system refused, when it was the system: where, why and what to do. */
export function systemFault(error: unknown): { readonly says: string; readonly mend: string } | undefined {
  const fault = faultOf(error);
  return fault && { says: `${fault.path || "The system refused something"}: ${fault.reason}.`, mend: fault.mend };
}

/** The trouble of something that could not be written; an error that is not of the system stays what it is. */
export function notWritten(what: string, to: string, error: unknown, left = "Nothing was changed."): unknown {
  const fault = faultOf(error);
  if (!fault) return error;
  // A place beside, where it is made first, says nothing to anybody.
  const beside = join(dirname(to), `.${basename(to)}-`);
  const where = ["", to].includes(fault.path) || fault.path.startsWith(beside) ? "" : ` at ${fault.path}`;
  return new Trouble(`${what} cannot be written to ${to}: ${fault.reason}${where}. ${left}`, fault.mend);
}
