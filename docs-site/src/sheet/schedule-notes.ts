/** What the words of a schedule mean, for whoever reads one for the first time. */
export const NOTES: Readonly<Record<string, string>> = {
  parts:
    "In all: what goes out, spares and what is brought along with it. As written: the length in the words of the document. Most power in use: the maker's greatest figure, spares left out. For: what needs it, and how many of it.",
  cables:
    "A label stands at both ends of its cable; from and to are in the way of power and signal. F is a feed, J a jumper, R the return that closes a loop, V a cable of the picture path. Reach: the straight way from socket to socket; the check of lengths adds slack to it.",
  panels:
    "A cell is named as the audience sees the face: the letter of its row from the top, the number of its column from the audience's left. A run is panels powered one after another, a chain panels sent data one after another; order 1 is the panel the feed goes to. First pixel: the upper left one of the panel on the raster, counted from 0.",
  cut: "For whoever makes the slides, and for whoever sets the source. A face that is wider or higher than the raster is cut into parts, and each part is sent at a place of its own. Face and raster: the first pixel of the part there, counted from 0 at the upper left. A part keeps its pixels one to one, and is neither turned nor scaled. Slides are made as one picture of the whole face where the source cuts it; where it cannot, as one picture of the raster, with each part where it stands there.",
  circuits:
    "Load and current: every panel at its maximum, and what else is on the circuit. Continuous rating: what of the breaker's rating may be used for hours, by the house standard. Share: the current, of the continuous rating. A circuit without runs feeds no panel.",
  hangs:
    "From the left: the left end of the bar as the audience sees it. Load, level: what the hang carries with the bar level on all its hangs. Load at worst: the most it carries, whatever the lengths of the ropes; the column after it says which hangs are taut then. Least WLL: the working load limit of the weakest of its parts. Structure rated: what the structure is stated to carry there. The weight in all, with its parts, stands on the hang plot.",
};
