import { wishForm } from "../starting/forms/wish-form.js";
import { newFile, refuseName } from "../starting/new-file.js";
import type { CommandContext } from "../terminal/context.js";
import { type FormOptions, openedHere } from "./start-document.js";

/** Writes a form for a wish into the docs repository; gives the exit status. */
export async function startWishCommand(name: string, options: FormOptions, context: CommandContext): Promise<number> {
  refuseName("wish", name);
  const { root, repository } = await openedHere(context);
  const [only, ...others] = repository.surveys.byName.keys();
  const path = `wishes/${name}.yaml`;
  const venue = options.venue ?? (others.length === 0 ? only : undefined);
  const surveyed = repository.surveys.byName.get(venue ?? "")?.placed.data as { practice?: string } | undefined;
  newFile(root, path, wishForm(name, venue, options.practice ?? surveyed?.practice ?? repository.standard.practice));
  context.print(`${path} is a wish now: say in it what is wanted, and leave out what nobody said.

  plumbmark draft ${path}      shows what can be made of it
`);
  return 0;
}
