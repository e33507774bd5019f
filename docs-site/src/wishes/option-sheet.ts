import { h, pageText } from "../html/html.js";
import { titleBlock } from "../html/title-block.js";
import { siteStyle } from "../style/site-style.js";
import { type WishSheet, wishContent } from "./wish-content.js";
import { draftFoot } from "./wish-style.js";

/** The options of a wish as a page that stands by itself and loads nothing. */
export const optionSheet = (sheet: WishSheet): string =>
  pageText(
    h("html", { lang: "en" }, [
      h("head", [
        h("meta", { charset: "utf-8" }),
        h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
        h("title", `Options: ${sheet.record.title}`),
        h("style", siteStyle + draftFoot),
      ]),
      h(
        "body",
        h("main", { id: "Main" }, [
          titleBlock(sheet.record.title, [
            ["Wish", sheet.record.wish],
            ["Status", "draft"],
            ["Inspected", sheet.today],
          ]),
          h("div", { class: "body" }, wishContent(sheet)),
        ]),
      ),
    ]),
  );
