import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "connectors.actives-overhead",
  states: "Processors, converters and sources that can stand on the floor do not hang overhead.",
  level: "should",
  why: "What has to be restarted has to be in reach. A converter on the bar takes a lift, a clear stage and twenty minutes.",
  judged:
    "Where the processor and every source and converter of the picture path stand: overhead where it says so, or where the place is a bar or a flown face of the build.",
  sources: ["practice"],
  *checks({ build }) {
    const above = new Set([
      ...build.bars.map(({ name }) => name),
      ...build.faces.filter((face) => face.overhead).map(({ name }) => name),
    ]);
    for (const active of build.actives) {
      const { label, stands: place, overhead } = active;
      if (place === undefined && overhead === undefined) {
        yield open(active, {
          says: `Where ${label} stands is not written down.`,
          mend: `Write it under \`${active.path}.place\`.`,
          needs: [`${active.path}.place`],
        });
        continue;
      }
      const up = overhead ?? above.has(place ?? "");
      yield is(active, {
        holds: !up,
        says: up
          ? `${label} hangs overhead${place === undefined ? "" : ` (${place})`}.`
          : `${label} is in reach${place === undefined ? "" : ` (${place})`}.`,
        mend: "Stand it on the floor or in the rack, and take a longer cable that carries the signal.",
      });
    }
  },
});
