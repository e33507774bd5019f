import { surveyFormPage } from "@plumbmark/docs-site";
import { venueForm } from "../starting/forms/venue-form.js";
import { newFile, refuseName } from "../starting/new-file.js";
import type { CommandContext } from "../terminal/context.js";
import { type FormOptions, openedHere } from "./start-document.js";

const titleOf = (name: string): string =>
  name
    .split("-")
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join(" ");

/** Writes a form for a survey into the docs repository, and the same to print; gives the exit status. */
export async function startVenueCommand(name: string, options: FormOptions, context: CommandContext): Promise<number> {
  refuseName("venue", name);
  const { root, repository } = await openedHere(context);
  const practice = options.practice ?? repository.standard.practice;
  const title = titleOf(name);
  const [path, paper] = [`venues/${name}.md`, `venues/${name}-form.html`];
  newFile(root, path, venueForm({ name, title, practice }));
  newFile(root, paper, surveyFormPage(title, practice === "iec" ? "iec" : "us"));
  context.print(`${path} is a survey to fill in: every key stands in it with what to look for.
${paper} is the same on paper, with a box for each answer: print it and take it along.

  plumbmark inspect      tells what is wrong with it, and what builds there still need
`);
  return 0;
}
