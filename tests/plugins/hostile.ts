/** A plugin that does what none may, or does it badly: its module, and what has to be said of it. */
export interface Hostile {
  readonly name: string;
  /** The module; `RULES` stands for a plugin with one rule of this work between two that are sound. */
  readonly module: string;
  readonly says: RegExp;
  /** Whether the whole plugin cannot be used, or only its one rule. */
  readonly whole?: true;
}

const HEAD = `import { atMost, is, open, plugin, quantity, rule } from "@plumbmark/kit";\n`;

const STATED = `states: "S.", level: "should", why: "w", judged: "j", sources: ["house"]`;

/** A plugin of three rules: the one in the middle does `work`. */
const ruleThat = (name: string, work: string, says: RegExp, before = ""): Hostile => ({
  name,
  says,
  module: `${HEAD}${before}
const sound = (id) => rule({ id, ${STATED}, *checks({ build }) { yield is(build, { holds: true, says: "Sound." }); } });
const hostile = rule({ id: "${name}.hostile", ${STATED}, checks: ${work} });
export default plugin({ kit: 1, rules: [sound("${name}.before"), hostile, sound("${name}.after")] });\n`,
});

const moduleThat = (name: string, module: string, says: RegExp): Hostile => ({
  name,
  module: HEAD + module,
  says,
  whole: true,
});

const RULE = (id: string, change = ""): string =>
  `{ id: "${id}", ${STATED}, *checks({ build }) { yield is(build, { holds: true, says: "Sound." }); }, ${change} }`;

const yields = (what: string): string => `function* ({ build }) { yield ${what}; }`;

/** Broken or hostile as a module: nothing of it can be used. */
export const hostileModules: readonly Hostile[] = [
  moduleThat("m-throws", `throw new Error("no licence");`, /no licence/u),
  moduleThat("m-rejects", `await Promise.reject(new Error("no network"));`, /no network/u),
  moduleThat("m-nonsense", `export default plugin({ kit: 1, rules: [ };`, /Unexpected token/u),
  moduleThat("m-never-ends", `for (;;);`, /did not finish within 5 s/u),
  moduleThat("m-waits", `await new Promise(() => {});`, /did not finish within 5 s/u),
  moduleThat("m-exits", `process.exit(0);`, /ended its process/u),
  moduleThat("m-aborts", `process.abort();`, /ended its process/u),
  moduleThat("m-grows", `const all = []; for (;;) all.push(new Array(10_000).fill(all.length));`, /more than 64 MB/u),
  moduleThat("m-imports-nothing", `import "@nobody/has-this";`, /@nobody\/has-this/u),
  moduleThat("m-imports-wrong", `import { noSuchThing } from "@plumbmark/kit";`, /noSuchThing/u),
  moduleThat("m-empty", ``, /export default plugin/u),
  moduleThat("m-function", `export default () => 1;`, /export default plugin/u),
  moduleThat("m-no-rules", `export default plugin({ kit: 1, rules: [] });`, /brings no rules/u),
  moduleThat("m-no-kit", `export default { rules: [${RULE("m-no-kit.a")}] };`, /which version of the kit/u),
  moduleThat(
    "m-later-kit",
    `export default { kit: 99, rules: [${RULE("m-later.a")}] };`,
    /version 99 of the kit.*has version 1/u,
  ),
  moduleThat("m-no-reason", `export default { kit: 1, rules: [${RULE("m-no-reason.a", `why: ""`)}] };`, /no `why`/u),
  moduleThat("m-bad-name", `export default { kit: 1, rules: [${RULE("Bad Name")}] };`, /id is not/u),
  moduleThat(
    "m-hearsay",
    `export default { kit: 1, rules: [${RULE("m-hearsay.a", `sources: ["hearsay"]`)}] };`,
    /`hearsay` is not known/u,
  ),
  moduleThat(
    "m-takes-a-name",
    `export default { kit: 1, rules: [${RULE("power.circuit-load")}] };`,
    /name of a rule there is/u,
  ),
  moduleThat(
    "m-twins",
    `export default { kit: 1, rules: [${RULE("m-twins.a")}, ${RULE("m-twins.a")}] };`,
    /two rules of the name/u,
  ),
  moduleThat("m-getter", `export default { get kit() { throw new Error("not today"); } };`, /not today/u),
];

/** Broken or hostile in one rule: the rules before and after it are carried out. */
export const hostileRules: readonly Hostile[] = [
  ruleThat("r-throws", `() => { throw new Error("not my day"); }`, /not my day/u),
  ruleThat("r-throws-nothing", `() => { throw undefined; }`, /undefined/u),
  ruleThat("r-gives-nothing", `() => undefined`, /iterable|undefined/u),
  ruleThat("r-async", `async function* ({ build }) { yield is(build, { holds: true, says: "x" }); }`, /iterable/u),
  ruleThat("r-text", yields(`"fine"`), /made with the kit/u),
  ruleThat("r-null", yields(`null`), /made with the kit|null/u),
  ruleThat(
    "r-no-number",
    yields(
      `atMost(build, { measured: { ...quantity("1 m"), value: NaN }, allowed: quantity("1 m"), says: () => "x" })`,
    ),
    /no finite number/u,
  ),
  ruleThat(
    "r-mixes-kinds",
    yields(`atMost(build, { measured: quantity("1 m"), allowed: quantity("1 kg"), says: () => "x" })`),
    /a length with a mass/u,
  ),
  ruleThat(
    "r-wrong-unit",
    yields(`atMost(build, { measured: quantity("1 stone"), allowed: quantity("1 kg"), says: () => "x" })`),
    /1 stone/u,
  ),
  ruleThat(
    "r-says-throws",
    yields(
      `atMost(build, { measured: quantity("1 m"), allowed: quantity("1 m"), says: () => { throw new Error("lost for words"); } })`,
    ),
    /lost for words/u,
  ),
  ruleThat(
    "r-says-number",
    yields(`atMost(build, { measured: quantity("1 m"), allowed: quantity("1 m"), says: () => 7 })`),
    /a sentence/u,
  ),
  ruleThat("r-says-too-much", yields(`is(build, { holds: true, says: "x".repeat(1e6) })`), /1000000 characters/u),
  ruleThat("r-getter", yields(`({ get form() { throw new Error("do not look"); } })`), /do not look/u),
  ruleThat("r-never-ends", `() => { for (;;); }`, /did not finish within 5 s/u),
  ruleThat(
    "r-sleeps",
    `() => { Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0); }`,
    /did not finish within 5 s/u,
  ),
  ruleThat(
    "r-yields-forever",
    `function* ({ build }) { for (;;) yield is(build, { holds: true, says: "x" }); }`,
    /more than 10000 checks|more than 64 MB/u,
  ),
  ruleThat("r-recurses", `() => { const f = () => f() + 1; return f(); }`, /call stack/u),
  ruleThat(
    "r-grows",
    `() => { const all = []; for (;;) all.push(new Array(10_000).fill(all.length)); }`,
    /more than 64 MB/u,
  ),
  ruleThat("r-buffers", `() => { const all = []; for (;;) all.push(Buffer.alloc(4_000_000, 1)); }`, /more than 64 MB/u),
  ruleThat("r-exits", `() => process.exit(0)`, /ended its process/u),
  ruleThat("r-aborts", `() => process.abort()`, /ended its process/u),
  ruleThat("r-kills-itself", `() => process.kill(process.pid, "SIGKILL")`, /ended its process/u),
  ruleThat("r-changes-model", `({ build }) => { build.faces.length = 0; return []; }`, /read only|Cannot/u),
  ruleThat("r-renames-build", `({ build }) => { build.context.file = "other.md"; return []; }`, /read only|Cannot/u),
  ruleThat("r-takes-parts", `({ repository }) => { repository.parts.clear(); return []; }`, /cannot be changed/u),
  ruleThat("r-answers", `() => { process.send({ answer: "done", job: 0, checks: [] }); return []; }`, /send/u),
  ruleThat(
    "r-leaves",
    `() => { process.disconnect(); const end = Date.now() + 300; while (Date.now() < end); return []; }`,
    /ended its process/u,
  ),
];

/** Rude, and none of the inspection's business: they are carried out, and nothing of it reaches the record. */
export const rudePlugins: readonly Hostile[] = [
  ruleThat(
    "q-prints",
    `function* ({ build }) { console.log("{}"); writeSync(1, "[1]\\n"); console.error("loud"); yield is(build, { holds: true, says: "Said." }); }`,
    /Said/u,
    `import { writeSync } from "node:fs";`,
  ),
  ruleThat(
    "q-pollutes",
    `function* ({ build }) { Object.prototype.polluted = true; Array.prototype.last = 1; yield is(build, { holds: true, says: "Said." }); delete Object.prototype.polluted; delete Array.prototype.last; }`,
    /Said/u,
  ),
  ruleThat(
    "q-stays",
    `function* ({ build }) { setInterval(() => {}, 1000); yield is(build, { holds: true, says: "Said." }); }`,
    /Said/u,
  ),
  ruleThat(
    "q-closes",
    `function* ({ build }) { process.stdout.destroy(); yield is(build, { holds: true, says: "Said." }); }`,
    /Said/u,
  ),
  ruleThat(
    "q-escapes",
    `function* ({ build }) { yield is(build, { holds: true, says: "Said \\u001b[2J<script>alert(1)</script>" }); }`,
    /Said/u,
  ),
];

export const hostilePlugins: readonly Hostile[] = [...hostileModules, ...hostileRules];
