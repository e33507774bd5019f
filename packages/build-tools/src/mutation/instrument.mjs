// Writes every mutant of a file into the file, each behind a switch: one build serves them all.

/** Shorthand properties and the like never hold a mutant of ours, so brackets round an expression are always allowed. */
function written(text, mutants, from, to) {
  let out = "";
  let at = from;
  const inside = mutants.filter((each) => each.from >= from && each.to <= to);
  for (const outer of outermost(inside)) {
    out += text.slice(at, outer.from);
    const here = inside.filter((each) => each.from === outer.from && each.to === outer.to);
    const deeper = inside.filter((each) => !here.includes(each));
    const original = written(text, deeper, outer.from, outer.to);
    out += here.reduce((rest, { id, put }) => `(__mutant(${id}) ? (${put}) : ${rest})`, `(${original})`);
    at = outer.to;
  }
  return out + text.slice(at, to);
}

function outermost(mutants) {
  const found = [];
  for (const each of [...mutants].sort((a, b) => a.from - b.from || b.to - a.to))
    if (!found.some(({ from, to }) => each.from >= from && each.to <= to)) found.push(each);
  return found;
}

export const instrumented = (text, mutants) => written(text, mutants, 0, text.length);
