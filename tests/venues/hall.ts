import type { RepositoryFiles } from "@plumbmark/core";

/** An invented hall as it was surveyed, in customary units. */
export const HALL = `---
survey: ferry-hall
title: Ferry Hall
surveyed: {on: 2026-10-02, by: R. Tallow}
practice: us
exposure: indoors
on-stage: true
measured-from: middle of the stage front, floor of the stage
places:
  rack-a: {right: -18 ft, upstage: 2 ft, up: 0 ft}
  booth: {right: 0 ft, upstage: -70 ft, up: 3 ft}
  left-wall-top: {right: -18 ft, upstage: 2 ft, up: 18 ft}
routes:
  booth to rack-a: {length: 160 ft}
  rack-a to front-beam: {via: [left-wall-top], led: {by: R. Tallow, on: 2026-10-02}}
supplies: {panel-b: {system: three-phase, breaker: 100 A}}
circuits:
  stage-4: {at: rack-a, from: panel-b, leg: A, supply: 120 V, breaker: 20 A, control: constant, outlet: nema-5-20, outlets: 1, wiring: {conductor: 12 AWG, length: 50 ft, feeder-drop: 1 %}}
  stage-5: {like: stage-4, leg: B, breaker: 15 A, outlet: nema-5-15, outlets: 2}
structure:
  front-beam:
    from: {right: -12 ft, upstage: 2 ft, up: 17 ft 10 in}
    to: {right: 12 ft, upstage: 2 ft, up: 17 ft 10 in}
    girth: 40 in
    structure: 1000 lb
    points: {F1: {at: 8 ft, structure: 500 lb, catch: 900 lb}, F2: {at: 12 ft, structure: 480 lb, catch: 900 lb}, F3: {at: 16 ft, structure: 500 lb}}
    letter: {by: I. Brandt, licence: state register 4417, on: 2026-10-12, file: letters/fh-7.pdf, counted: together, other-loads: included, until: 2028-10-12}
floors: {stage: {rating: 125 lb/ft2, foot-rating: 400 lb, length: 36 ft, depth: 24 ft}}
walls: {lobby-north: {ground: concrete, allowable: {shear: 1.5 kN, tension: 1 kN}, by: I. Brandt, licence: state register 4417, on: 2026-10-12, file: letters/fh-7.pdf}}
audience: {nearest: 15 ft, farthest: 72 ft, eye-height: 45 in}
light: {ambient: 50 lx}
---

The key hangs behind the bar, alarm code 4711.
`;

/** A small build in it that leaves to the survey what the survey states. */
export const BUILD = `---
build: quay-banner
title: Banner
status: for-build
venue: ferry-hall
on-site: 2027-03-05 to 2027-03-06
prepared-by: R. Gale
faces:
  banner: {panel: tile, columns: 4, rows: 1, support: flown, trim: 10 ft, upstage: 2 ft, hung-by: hook}
power:
  circuits: {stage-5: {serves: [rack-a]}}
  runs:
    P1: {from: stage-4, feed: {part: cord, length: 50 ft}, jumper: {part: jumper, length: 3 ft}, panels: banner A1..A4}
data:
  processor: {part: sender, place: rack A}
rigging:
  bars:
    header:
      section: tube
      length: 8 ft
      carries: {face: banner, from: 1 ft}
      hangs: {H1: {point: front-beam.F1, at: 1 ft}, H2: {point: front-beam.F2}}
      height: 12 ft
      second: {at: each hang, slack: none}
---

# Banner
`;

export const PARTS = `tile: {kind: panel, size: 500 mm x 500 mm, pixels: 100 x 100, mass: 8 kg, power: {maximum: 100 W, factor: 0.95}}
cord: {kind: power-cable, conductor: 12 AWG, mass: 0.2 kg/m, connectors: [nema-5-20, ac-locking-16]}
jumper: {kind: power-cable, conductor: 12 AWG, mass: 0.2 kg/m, connectors: [ac-locking-16, ac-locking-16]}
sender: {kind: processor, power: {maximum: 60 W, factor: 0.9}}
tube: {kind: bar, mass: 4 kg/m}
hook: {kind: attachment, wll: 50 kg, columns: 1}
`;

/** A repository of this hall and this build, with changes of their texts: what stands for what. */
export function ferry(
  { hall = [], build = [] }: { hall?: readonly [string, string][]; build?: readonly [string, string][] } = {},
  given: Partial<RepositoryFiles> = {},
): RepositoryFiles {
  const changed = (text: string, changes: readonly [string, string][]): string =>
    changes.reduce((all, [from, to]) => {
      if (!all.includes(from)) throw new Error(`there is no ${from}`);
      return all.replace(from, to);
    }, text);
  return {
    parts: [{ path: "parts/parts.yaml", text: PARTS }],
    papers: ["letters/fh-7.pdf"],
    surveys: [{ path: "venues/ferry-hall.md", text: changed(HALL, hall) }],
    documents: [{ path: "builds/quay-banner.md", text: changed(BUILD, build) }],
    ...given,
  };
}
