// A schema may take a piece of another one (`build.schema.json#/$defs/circuit`), so that a survey and a build describe
// a circuit in the same words. What is shipped and what the readers walk has everything in one file.

const FOREIGN = /^([a-z-]+\.schema\.json)#\/(?:\$defs\/([A-Za-z-]+)|properties\/([A-Za-z-]+))$/u;

/**
 * Copies what a schema takes from others into its own `$defs`.
 * @param schema the schema with references to others
 * @param others every schema by the name of its file
 */
export function wholeSchema(schema, others) {
  const whole = structuredClone(schema);
  const taken = new Map();
  const added = {};
  const isFree = (name) => schema.$defs?.[name] === undefined && added[name] === undefined;
  const nameOf = (file, name) => (isFree(name) ? name : `${file.replace(/\..*$/u, "")}-${name}`);
  const take = (file, name, piece, property) => {
    // A property and a definition may be called alike and be two things.
    const key = `${file}/${property ? "properties" : "$defs"}/${name}`;
    if (taken.has(key)) return taken.get(key);
    const as = nameOf(file, name);
    taken.set(key, as);
    // Named before it is walked: a piece may refer to itself.
    added[as] = {};
    added[as] = rewritten(structuredClone(piece), file);
    return as;
  };
  const find = (file, definition, property) => {
    const other = others[file];
    const piece = definition === undefined ? other?.properties?.[property] : other?.$defs?.[definition];
    if (piece === undefined) throw new Error(`${file} has no ${definition ?? property}`);
    return piece;
  };
  const rewritten = (node, file) => {
    if (Array.isArray(node)) return node.map((each) => rewritten(each, file));
    if (node === null || typeof node !== "object") return node;
    for (const [key, value] of Object.entries(node)) {
      if (key !== "$ref" || typeof value !== "string") node[key] = rewritten(value, file);
      else if (FOREIGN.test(value)) {
        const [, from, definition, property] = value.match(FOREIGN);
        node.$ref = `#/$defs/${take(from, definition ?? property, find(from, definition, property), definition === undefined)}`;
      } else if (file !== undefined) {
        const name = value.replace("#/$defs/", "");
        node.$ref = `#/$defs/${take(file, name, find(file, name))}`;
      }
    }
    return node;
  };
  const own = rewritten(whole, undefined);
  return taken.size === 0 ? own : { ...own, $defs: { ...own.$defs, ...added } };
}
