import { expect, test } from "vitest";
import { committed } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const FASCIAS = "builds/riser-fascias.md";

test("since a revision: what is committed, staged, changed and new; what others did to it since is not this branch's", async () => {
  const repository = committed();
  repository.git("switch", "--quiet", "-c", "work");
  repository.change(BANNER, "breaker: 20 A", "breaker: 1 A");
  repository.commit();
  repository.git("switch", "--quiet", "main");
  repository.change(FASCIAS, "breaker: 15 A", "breaker: 1 A");
  repository.commit();
  repository.git("switch", "--quiet", "work");
  expect(await repository.verdicts("--since", "main")).toEqual({ [BANNER]: "not ready" });
  repository.write("builds/new.md", "---\nbuild: new\n---\n# New\n");
  repository.change("builds/side-strips.md", "revision: ", "revision: 1");
  expect(Object.keys(await repository.verdicts("--since", "main"))).toEqual(
    ["builds/new.md", BANNER, "builds/side-strips.md"].sort(),
  );
});

test("a tag and a commit name a revision, a file does not", async () => {
  const repository = committed();
  repository.git("tag", "first");
  expect(await repository.verdicts("--since", "first")).toEqual({});
  expect(await repository.verdicts("--since", repository.git("rev-parse", "HEAD").trim())).toEqual({});
  expect((await repository.plumbmark("inspect", "--since", "HEAD:README.md")).status).toBe(2);
});
