/** Words people write for a key, and the key they mean; only where that is known and does not stand there already. */
const KEYS: Readonly<Record<string, string>> = {
  weight: "mass",
  swl: "wll",
  "load-limit": "wll",
  "working-load-limit": "wll",
  brightness: "luminance",
  resolution: "pixels",
  amps: "rating",
  qty: "count",
  quantity: "count",
  number: "count",
  wire: "conductor",
  gauge: "conductor",
  cores: "conductors",
  type: "kind",
  name: "describes",
  description: "describes",
  location: "at",
  place: "at",
  date: "on",
  day: "on",
  voltage: "supply",
  plug: "outlet",
  socket: "outlet",
};

/** Where something lies the other way: it is less than nothing there. */
const OPPOSITE: Readonly<Record<string, string>> = { left: "right", downstage: "upstage", down: "up" };

const VALUES: Readonly<Record<string, string>> = {
  hung: "flown",
  hanging: "flown",
  suspended: "flown",
  standing: "stacked",
  "ground-stacked": "stacked",
  ground: "stacked",
  "on-wall": "wall",
  "wall-mounted": "wall",
  "wire-rope": "rope",
  cable: "power-cable",
  cord: "power-cable",
  "network-cable": "data-cable",
  tile: "panel",
  module: "panel",
  shackle: "hardware",
  clamp: "hardware",
  turnbuckle: "hardware",
  pipe: "bar",
  tube: "bar",
  truss: "bar",
  computer: "source",
  player: "source",
};

const plain = (word: string): string => word.trim().toLowerCase().replaceAll(/[ _]/gu, "-");
const among = (word: string | undefined, known: readonly string[]): string | undefined =>
  word !== undefined && known.includes(word) ? word : undefined;

/** The key that is meant by another word for it. */
export const keyFor = (word: string, known: readonly string[]): string | undefined => among(KEYS[plain(word)], known);

/** The key of the other way: `right` for `left`. */
export const oppositeOf = (word: string, known: readonly string[]): string | undefined =>
  among(OPPOSITE[plain(word)], known);

/** The word of a list that is meant by another word for it. */
export const valueFor = (word: string, known: readonly string[]): string | undefined =>
  among(VALUES[plain(word)], known);
