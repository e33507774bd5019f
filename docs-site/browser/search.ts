import MiniSearch, { type SearchResult } from "minisearch";
import { INDEX, QUERY } from "../src/search/options.js";

declare global {
  var plumbmarkIndex: string;
}

const MOST = 50;

const element = (id: string): HTMLElement => document.getElementById(id) as HTMLElement;

/** An entry of the list; texts are set as texts, so that nothing an author wrote is ever read as HTML. */
function item({ title, kind, href, says }: SearchResult): HTMLElement {
  const link = document.createElement("a");
  link.href = href;
  link.textContent = title;
  const note = document.createElement("small");
  note.textContent = ` ${kind}. ${says}`;
  const line = document.createElement("li");
  line.append(link, note);
  return line;
}

const counted = (count: number): string =>
  count === 0
    ? "Nothing is found."
    : count === 1
      ? "One is found."
      : `${count} are found${count > MOST ? `; the first ${MOST} are shown` : ""}.`;

function begin(): void {
  const index = MiniSearch.loadJSON(globalThis.plumbmarkIndex, INDEX);
  const words = element("Words") as HTMLInputElement;
  const show = (): void => {
    const asked = words.value.trim();
    const found = asked === "" ? [] : index.search(asked, QUERY);
    element("Found").replaceChildren(...found.slice(0, MOST).map(item));
    element("Count").textContent = asked === "" ? "" : counted(found.length);
  };
  element("Search").hidden = false;
  element("Search").addEventListener("submit", (event) => {
    event.preventDefault();
    element("Found").querySelector("a")?.click();
  });
  words.addEventListener("input", show);
  words.value = new URLSearchParams(location.search).get("q") ?? "";
  words.focus();
  show();
}

begin();
