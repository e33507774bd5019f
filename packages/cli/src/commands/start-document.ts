import { choices, openRepository } from "@plumbmark/core";
import { findStandard } from "../repository/find-standard.js";
import { readRepository } from "../repository/read-repository.js";
import { disk } from "../source/disk.js";
import { buildForm } from "../starting/forms/build-form.js";
import { partForm, partKinds } from "../starting/forms/part-form.js";
import { newFile, refuseName } from "../starting/new-file.js";
import type { CommandContext } from "../terminal/context.js";
import { Trouble } from "../terminal/trouble.js";

export interface FormOptions {
  readonly practice?: string;
  readonly venue?: string;
  readonly panel?: string;
  readonly kind?: string;
}

/** The docs repository a command is given in. @throws Trouble when there is none */
export async function openedHere(context: CommandContext) {
  const { path } = await findStandard(context.folder, disk);
  if (path === undefined)
    throw new Trouble(
      "There is no docs repository here or above.",
      "Go to one, or make one with `plumbmark start FOLDER`.",
    );
  const { root, files } = await readRepository({
    folder: context.folder,
    paths: [],
    standard: undefined,
    today: context.today,
  });
  return { root, repository: openRepository(files, [], { today: context.today }) };
}

/** The panel that is asked for, else the first there is. */
function panelOf(panels: readonly string[], asked: string | undefined): string | undefined {
  if (asked === undefined) return panels[0];
  if (panels.includes(asked)) return asked;
  throw new Trouble(`The catalogue has no panel \`${asked}\`.`, choices(panels, asked));
}

/** Writes a new build document: what is known already, and a line for every other key; gives the exit status. */
export async function startBuildCommand(name: string, options: FormOptions, context: CommandContext): Promise<number> {
  refuseName("build", name);
  const { root, repository } = await openedHere(context);
  const panels = [...repository.catalogue.parts.values()]
    .filter(({ kind }) => kind === "panel")
    .map(({ name: each }) => each);
  const path = `builds/${name}.md`;
  const form = buildForm({
    name,
    venue: options.venue,
    practice: options.practice ?? repository.standard.practice,
    panel: panelOf(panels, options.panel),
    sections: repository.standard.sections ?? [],
  });
  newFile(root, path, form);
  context.print(`${path} is a draft now. Every key stands in it with what it means and where it is found.

  plumbmark inspect ${path}      tells what is still to be found out
`);
  return 0;
}

/** Writes a form for a new part into the catalogue; gives the exit status. */
export async function startPartCommand(name: string, options: FormOptions, context: CommandContext): Promise<number> {
  refuseName("part", name);
  const { kind = "panel" } = options;
  if (!partKinds.includes(kind)) throw new Trouble(`There is no kind of part \`${kind}\`.`, choices(partKinds, kind));
  const { root, repository } = await openedHere(context);
  const there = repository.catalogue.parts.get(name);
  if (there) throw new Trouble(`The catalogue has \`${name}\` already.`, "Give the part another name.");
  const path = `parts/${name}.yaml`;
  newFile(root, path, partForm(name, kind, options.practice ?? repository.standard.practice));
  context.print(`${path} is a form for a ${kind} now: fill in what its maker states.\n`);
  return 0;
}
