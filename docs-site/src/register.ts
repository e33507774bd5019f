import type { InspectionRecord } from "@plumbmark/core";
import { h } from "hastscript";
import type { Published } from "./documents.js";
import { type Content, flat, type Page } from "./page.js";
import { verdict } from "./sheet.js";

const COLUMNS = ["Build", "Revision", "Status", "Verdict", "Checks", "Hold", "Fail", "Open", "Waived"];

const number = (value: number): Content => h("td", { class: "at-right" }, String(value));

const line = ({ entry, page, title }: Published): Content => {
  const { checks, holds, fails, open, waived } = entry.counts;
  return h(
    "tr",
    flat([
      h("th", { scope: "row" }, h("a", { href: page }, title)),
      h("td", entry.revision === undefined ? "not stated" : String(entry.revision)),
      h("td", { class: "whole" }, entry.status ?? "not stated"),
      h("td", flat(verdict(entry.verdict))),
      [checks, holds, fails, open, waived].map(number),
    ]),
  );
};

/** The register: every build with its status, verdict and counts. */
export function register(documents: readonly Published[], { standard, totals }: InspectionRecord): Page {
  const content: Content = [
    h(
      "p",
      `${totals.documents} documents: ${totals.ready} ready, ${totals["not-ready"]} not ready. Inspected by ${standard}.`,
    ),
    h(
      "section",
      { class: "wide", tabIndex: 0, ariaLabel: "Builds" },
      h("table", [
        h("caption", "Builds"),
        h(
          "thead",
          h(
            "tr",
            COLUMNS.map((each) => h("th", { scope: "col" }, each)),
          ),
        ),
        h("tbody", flat(documents.map(line))),
      ]),
    ),
  ];
  return { path: "index.html", title: "Register of builds", content };
}
