/** Pages every page leads to, in the order of the menu: path and name. A page that is added here has to be published. */
export const MENU: readonly (readonly [string, string])[] = [
  ["index.html", "Register"],
  ["rules/index.html", "Rules"],
  ["house-standard.html", "House standard"],
  ["waivers.html", "Waivers"],
  ["parts.html", "Parts"],
  ["stock.html", "Stock"],
  ["venues/index.html", "Venues"],
  ["sources.html", "Sources"],
  ["guide/index.html", "Guide"],
  ["reference/index.html", "Reference"],
  ["search.html", "Search"],
];
