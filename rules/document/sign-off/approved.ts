import { type Build, is, isToCome, open, type RawCheck } from "@plumbmark/kit";
import { approverPath, named } from "./named.js";

const mendOf = ({ context, approval }: Build): string =>
  `Once it is ready but for this, have it approved: \`plumbmark approve ${context.file} --by NAME\` writes it, with the code of what the document then is${approval.code === undefined ? "" : `: as it is now, ${approval.code}`}.`;

/** That nobody, or somebody without saying of what, approved it. */
function noApproval(build: Build): RawCheck {
  const alone = build.reader.text("approved-by") !== undefined;
  return open(
    { path: alone ? "approved-by" : "status", label: build.label },
    {
      says: alone
        ? "`approved-by` does not say what was approved: it would outlast every change of the document."
        : "The build does not say who approved it.",
      mend: mendOf(build),
      needs: ["approved"],
    },
  );
}

/** That the day is one, and has come. */
function dayOf(build: Build): RawCheck {
  const { approval, context, label, reader } = build;
  const path = "approved.on";
  if (!reader.has(path))
    return open({ path: "approved", label }, { says: "The approval has no day.", mend: mendOf(build), needs: [path] });
  const holds = approval.on !== undefined && !isToCome(approval.on, context.today);
  return is(
    { path, label },
    {
      holds,
      says: holds
        ? `It was approved on ${approval.on}.`
        : approval.on === undefined
          ? "The day of the approval is no day."
          : `The day of the approval, ${approval.on}, is still to come.`,
      mend: mendOf(build),
    },
  );
}

/** That the document is what was approved. */
function contentCheck(build: Build): RawCheck {
  const { approval, label } = build;
  const thing = { path: "approved.code", label };
  if (approval.given === undefined || approval.code === undefined)
    return open(
      { ...thing, path: "approved" },
      {
        says: "The approval has no code: it does not say what was approved.",
        mend: mendOf(build),
        needs: ["approved.code"],
      },
    );
  const holds = approval.given === approval.code;
  return is(thing, {
    holds,
    says: holds
      ? `The document and what it rests on are what was approved, ${approval.code}.`
      : `What was approved is ${approval.given}; the document, or what it rests on, was changed since and is ${approval.code}.`,
    mend: mendOf(build),
  });
}

/** Who approved it, when, and that it still is what they approved. */
export function* approved(build: Build): Iterable<RawCheck> {
  if (!build.reader.has("approved")) {
    yield noApproval(build);
    return;
  }
  yield* named(build, { path: approverPath(build), act: "approve", did: "approved" });
  yield dayOf(build);
  yield contentCheck(build);
}
