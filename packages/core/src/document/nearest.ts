/** Edit distance with transpositions (optimal string alignment). */
function distance(one: string, other: string): number {
  const rows: number[][] = [Array.from({ length: other.length + 1 }, (_, index) => index)];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const cost = one[i - 1] === other[j - 1] ? 0 : 1;
      let best = Math.min(
        (rows[i - 1]?.[j] as number) + 1,
        (row[j - 1] as number) + 1,
        (rows[i - 1]?.[j - 1] as number) + cost,
      );
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1])
        best = Math.min(best, (rows[i - 2]?.[j - 2] as number) + 1);
      row.push(best);
    }
    rows.push(row);
  }
  return rows[one.length]?.[other.length] as number;
}

/** The known words near enough to a misspelt one to be meant, the nearest first. */
export function nearOnes(word: string, known: readonly string[]): readonly string[] {
  if (word.length > 60) return [];
  const lower = word.toLowerCase();
  const most = Math.max(1, Math.floor(word.length / 3));
  return (
    known
      .map((each) => ({ each, letters: each.toLowerCase() }))
      // What one word has more letters than the other has to be put in: of most words that is told without a look at them.
      .filter(({ letters }) => Math.abs(letters.length - lower.length) <= most)
      .map(({ each, letters }) => ({ each, far: distance(lower, letters) }))
      .filter(({ far }) => far <= most)
      .sort((a, b) => a.far - b.far)
      .map(({ each }) => each)
  );
}

/** The known word nearest to a misspelt one, or undefined when none is near enough to be meant. */
export const nearest = (word: string, known: readonly string[]): string | undefined => nearOnes(word, known)[0];

/** A list for people: "`a`, `b` or `c`", with the nearest word first when there is one; of a long one the first `most`. */
export function choices(known: readonly string[], word?: string, most = 24): string {
  if (known.length === 0) return "The catalogue holds nothing of the kind; enter it first.";
  const near = word === undefined ? undefined : nearest(word, known);
  const listed = known.slice(0, most).map((each) => `\`${each}\``);
  const more = known.length > most ? ` and ${known.length - most} more` : "";
  const all =
    listed.length > 1 && more === ""
      ? `${listed.slice(0, -1).join(", ")} or ${listed.at(-1)}`
      : listed.join(", ") + more;
  return near ? `Did you mean \`${near}\`? It may be ${all}.` : `It may be ${all}.`;
}

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
