import { isBuildDocument, type Place, readHouseStandard } from "@plumbmark/core";
import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver/node.js";
import { kindOfText } from "../answers/index.js";
import { rangeOf } from "./convert.js";

const TOP: Place = { line: 1, column: 1, endLine: 1, endColumn: 1 };

const told = (place: Place, code: string, message: string): Diagnostic => ({
  range: rangeOf(place),
  severity: DiagnosticSeverity.Error,
  source: "plumbmark",
  code,
  message,
});

/**
 * What is told in a file whose docs repository cannot be read: in a build document why it is not inspected, in a house
 * standard what is wrong with it. Of other files nobody knows whether they belong to one.
 */
export function refusedDiagnostics(path: string, text: string, reason: string): Diagnostic[] {
  if (kindOfText(path, text) === "house standard")
    return readHouseStandard({ path, text }).mistakes.map(({ place, says, mend }) =>
      told(place, "house-standard", `${says} ${mend}`),
    );
  return isBuildDocument(text) ? [told(TOP, "not-inspected", `It is not inspected. ${reason}`)] : [];
}
