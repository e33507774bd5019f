// Writes a small site over and over, once for every step at which the disk can refuse (see faults.mjs), and prints a
// line of JSON for each. Words: the folder to work in, and whether there is an earlier site.
import { cpSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { writeSite } from "@plumbmark/docs-site";

const [folder, hasEarlier] = process.argv.slice(2);
const { arm, steps } = globalThis.plumbmarkFaults;

const earlier = new Map([
  ["index.html", "the earlier one"],
  ["same/page.html", "the same"],
  ["old/page.html", "old"],
]);
const later = new Map([
  ["index.html", "the later one"],
  ["same/page.html", "the same"],
  ["new/page.html", "new"],
]);

const REFUSALS = ["ENOSPC", "EIO", "EROFS", "EACCES", "EMFILE", "EDQUOT"];

async function attempt(site, plan) {
  arm(plan);
  const told = await writeSite(later, site).then(
    () => "done",
    ({ code = "", message }) => `${code} ${message}`,
  );
  const count = steps();
  arm({});
  return { told, count };
}

for (const code of REFUSALS)
  for (const on of [false, true])
    for (let at = 1, last = Number.POSITIVE_INFINITY; at <= last; at += 1) {
      const place = join(folder, `${code}-${on}-${at}`);
      mkdirSync(place, { recursive: true });
      if (hasEarlier === "earlier") await writeSite(earlier, join(place, "deep/site"));
      const { told, count } = await attempt(join(place, "deep/site"), { at, code, on });
      cpSync(place, `${place}-after`, { recursive: true });
      await writeSite(later, join(place, "deep/site"));
      if (count < at) last = at;
      process.stdout.write(`${JSON.stringify({ place, code, told, struck: count >= at })}\n`);
    }
