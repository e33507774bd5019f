import { type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Device = Build["devices"][number];

/** What of its power its part does not say. */
function unsaid(device: Device): RawCheck | undefined {
  const { part, load } = device;
  if (device.saysPower && load.known) return undefined;
  const says = device.saysPower
    ? `${device.label}: its volt-amperes cannot be told${load.known ? "" : `: ${load.gaps.map(({ what }) => what).join(", ")} is not written down`}.`
    : `${device.label}: its part says nothing of its power.`;
  return open(device, {
    says,
    mend: `Write \`power: {maximum: …, factor: …}\` of ${part.name} in the catalogue. On its marking stand volts and amperes: their product is a \`maximum\` in VA, which needs no factor. What is supplied over its picture cable has \`power: none\`.`,
    needs: [`${part.name}.power`],
  });
}

export default rule({
  id: "power.devices",
  states: "Processor, sources and converters are each on one circuit that is written down.",
  level: "shall",
  why: "A processor on whatever outlet is nearest goes dark with somebody's coffee machine, and loads a circuit that was counted without it.",
  judged:
    "Every processor, source and converter that takes power of its own is on the circuit that names it under `serves`, else on the one that serves its place; its volt-amperes, inrush and leakage then count there. Where two circuits serve a place, the devices are named. One whose part says `power: none` is on no circuit. A place is compared in small letters with hyphens for blanks.",
  sources: ["practice", "part"],
  *checks({ build }) {
    const saying = build.circuits.filter(({ serves }) => serves.length > 0);
    for (const device of build.devices) {
      if (device.takesNone) continue;
      const gap = unsaid(device);
      if (gap) yield gap;
      const { circuits, stands } = device;
      const names = circuits.map(({ name }) => name).join(" and ");
      if (circuits.length > 1)
        yield open(device, {
          says: `${device.label} is served by the circuits ${names}.`,
          mend: `Name it under \`serves\` of the one it is on: \`${device.part.name}\`.`,
          needs: circuits.map(({ path }) => `${path}.serves`),
        });
      else if (circuits.length === 0 && (saying.length === 0 || stands === undefined))
        yield open(device, {
          says: `On which circuit ${device.label} is cannot be told.`,
          mend: `Write under the circuit what it serves, such as \`serves: [${stands ?? device.part.name}]\`${stands === undefined ? ", or the place of the device" : ""}.`,
          needs: [saying.length === 0 ? "power.circuits" : `${device.path}.place`],
        });
      else
        yield is(device, {
          holds: circuits.length === 1,
          says:
            circuits.length === 1
              ? `${device.label} is on circuit ${names}.`
              : `${device.label} is on no circuit: none serves ${stands} or names it.`,
          mend: `Write it under \`serves\` of the circuit it is plugged into.`,
        });
    }
  },
});
