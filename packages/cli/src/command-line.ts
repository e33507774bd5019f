import { Command, Option } from "commander";
import type { Engine } from "./engine/engine.js";
import {
  APPROVE_HELP,
  COLLATE_HELP,
  DRAFT_HELP,
  EXIT,
  HOOK_HELP,
  INSPECT_HELP,
  LANGUAGE_SERVER_HELP,
  MEND_HELP,
  PUBLISH_HELP,
  RULES_HELP,
  START_HELP,
  TAKEOFF_HELP,
  WORKINGS_HELP,
} from "./help.js";
import type { CommandContext } from "./terminal/context.js";

/** Each is loaded when it is run: no command waits for what another needs. */
const commands = {
  inspect: () => import("./commands/inspect.js"),
  workings: () => import("./commands/workings.js"),
  takeoff: () => import("./commands/takeoff.js"),
  draft: () => import("./commands/draft.js"),
  rules: () => import("./commands/rules.js"),
  publish: () => import("./commands/publish.js"),
  approve: () => import("./commands/approve.js"),
  mend: () => import("./commands/mend.js"),
  languageServer: () => import("./commands/language-server.js"),
  start: () => import("./commands/start.js"),
  collate: () => import("./commands/collate.js"),
  hook: () => import("./commands/hook.js"),
};

const form = (): Option => new Option("--as <form>", "the form to print in").choices(["text", "json"]).default("text");

const reportForm = (): Option =>
  new Option("--as <form>", "the form to print in")
    .choices(["text", "json", "sarif", "gnu", "markdown"])
    .default("text");

const standard = (): Option =>
  new Option("--standard <file>", "use this house standard instead of the one found above the documents");

const noCache = (): Option => new Option("--no-cache", "neither use nor keep results of earlier inspections");

const noPlugins = (): Option => new Option("--no-plugins", "run no plugin: what their rules would have found is open");

/** The engine that commands work with; it is loaded by those that need one. */
async function engine({ cache = true }: { readonly cache?: boolean } = {}): Promise<Engine> {
  const { fastEngine } = await import("./engine/fast.js");
  return cache ? fastEngine() : fastEngine(() => undefined);
}

/** The command line; `done` is told the exit status of the command that ran. */
export function commandLine(context: CommandContext, version: string, done: (status: number) => void): Command {
  const program = new Command("plumbmark")
    .description(
      "Inspects build documents of modular LED displays: computes what they describe and judges it by your house standard.",
    )
    .version(version, "-v, --version", "print the version")
    .exitOverride()
    .configureOutput({
      writeOut: (text) => context.print(text),
      writeErr: () => undefined,
      getOutHelpWidth: () => context.width,
    })
    .helpCommand("help [command]", "explain a command")
    .addHelpText("after", EXIT);
  program
    .command("inspect")
    .description("inspect build documents: a file, a folder, or the whole docs repository you are in")
    .argument("[paths...]", "build documents or folders of them")
    .addOption(reportForm())
    .option("--every", "list every check, also those that hold")
    .option(
      "--staged",
      "inspect what is staged in git: the documents a commit would change, and those it would concern",
    )
    .option("--since <revision>", "inspect what was changed since the work tree parted from a revision of git")
    .addOption(standard())
    .addOption(noPlugins())
    .addOption(noCache())
    .option("--watch", "inspect again whenever a file of the docs repository changes")
    .option(
      "--against <what>",
      "a revision of git, or another edition of the house standard (a .yaml file): tell what comes out otherwise",
    )
    .addHelpText("after", INSPECT_HELP)
    .action(async (paths, options) => {
      const { inspectCommand, watchCommand } = await commands.inspect();
      const command = options.watch ? watchCommand : inspectCommand;
      done(await command(paths, { ...options, version }, context, await engine(options)));
    });
  program
    .command("workings")
    .description("show every computed value of a document with its working")
    .argument("<file>", "a build document")
    .argument("[path]", "only the values at this path and below it, for instance power.circuits")
    .addOption(form())
    .addOption(standard())
    .addHelpText("after", WORKINGS_HELP)
    .action(async (file, path, options) =>
      done(await (await commands.workings()).workingsCommand(file, path, options, context)),
    );
  program
    .command("takeoff")
    .description(
      "count the parts of a document; list its cables, panels, cut of the picture, circuits, hangs, what it costs and what is not on the shelf",
    )
    .argument(
      "<file...>",
      "a build document, or several for `shortfall`; then parts, cables, panels, cut, circuits, hangs, prices or shortfall (without it parts and cables)",
    )
    .addOption(new Option("--as <form>", "the form to print in").choices(["text", "markdown", "csv"]).default("text"))
    .addOption(standard())
    .addHelpText("after", TAKEOFF_HELP)
    .action(async (words, options) => done(await (await commands.takeoff()).takeoffCommand(words, options, context)));
  program
    .command("draft")
    .description("lay out builds from a wish: options to choose from, and the document of the one that is chosen")
    .argument("[wishes...]", "files of wishes, for instance wishes/spring-banner.yaml; without one, all there are")
    .addOption(new Option("--as <form>", "the form to print in").choices(["text", "json", "markdown"]).default("text"))
    .option("--option <number>", "write this option as a build document")
    .option("--to <file>", "where the build document goes")
    .option("--like <build>", "lay out a build that stands in another size, and show what is another then")
    .option("--width <extent>", "with --like: the width wanted, for instance `12 ft`")
    .option("--height <extent>", "with --like: the height wanted")
    .option("--face <name>", "with --like: the face that is meant, of a build that has several")
    .option(
      "--sheet <file>",
      "write the options side by side, with face and hang plot, as a page for talking to a client",
    )
    .option("--replace", "replace what is there already")
    .option("--every", "show every option that no other betters in everything")
    .option("--pairs", "without a size: show also which two faces the same panels make at the same time")
    .option("--together", "one purchase of one batch that serves all the wishes")
    .option("--within <time>", "end the search after this time, for instance `5 s`, and say what was not looked at")
    .addOption(standard())
    .addHelpText("after", DRAFT_HELP)
    .action(async (wishes, options) => done(await (await commands.draft()).draftCommand(wishes, options, context)));
  program
    .command("rules")
    .description("list the rules in force and where each value comes from, or state one in full")
    .argument("[id]", "a rule, for instance power.circuit-load")
    .addOption(new Option("--as <form>", "the form to print in").choices(["text", "json", "markdown"]).default("text"))
    .addOption(standard())
    .addHelpText("after", RULES_HELP)
    .action(async (id, options) => done(await (await commands.rules()).rulesCommand(id, options, context)));
  program
    .command("publish")
    .description("publish a docs repository as a static site that needs no web server")
    .argument("[folder]", "a docs repository; without it, the one you are in")
    .requiredOption("--to <folder>", "where the site goes: a new or empty folder, or an earlier site")
    .option("--venue-prose", "publish the prose of surveys, too: keys, codes and what clients tell nobody else")
    .option("--watch", "publish again whenever a file of the docs repository changes")
    .addOption(standard())
    .addOption(noPlugins())
    .addHelpText("after", PUBLISH_HELP)
    .action(async (folder, options) =>
      done(await (await commands.publish()).publishCommand(folder, options, context, await engine())),
    );
  program
    .command("start")
    .description("make a docs repository to begin from, or write something new into the one you are in")
    .argument("<what>", "a folder, `.` for the one you are in, or the word `build`, `part`, `rule`, `venue` or `wish`")
    .argument("[name]", "after such a word: the name of the new one")
    .option("--practice <practice>", "us or iec: of the house, or of the new build")
    .option("--forge <forge>", "where the repository is pushed to, for its pipeline file: github or gitlab")
    .option("--venue <venue>", "where the new build stands: the name of a survey, or a text")
    .option("--panel <part>", "the panel of the new build")
    .option("--kind <kind>", "the kind of the new part; without it, a panel")
    .addHelpText("after", START_HELP)
    .action(async (what, name, options) =>
      done(await (await commands.start()).startCommand(what, name, { ...options, version }, context)),
    );
  program
    .command("approve")
    .description("approve a build document as it is: bind an approval to its content")
    .argument("<file>", "a build document that is ready but for its approval")
    .requiredOption("--by <name>", "who approves it; somebody other than who prepared it")
    .addOption(standard())
    .addOption(noPlugins())
    .addHelpText("after", APPROVE_HELP)
    .action(async (file, options) => done(await (await commands.approve()).approveCommand(file, options, context)));
  program
    .command("mend")
    .description("put right what has one answer, and keep every other byte: figures in the text, keys, decimal commas")
    .argument("[paths...]", "documents, parts or stock, or folders of them; without one, the whole docs repository")
    .option("--show", "print the difference and change nothing")
    .addOption(standard())
    .addOption(noPlugins())
    .addHelpText("after", MEND_HELP)
    .action(async (paths, options) => done(await (await commands.mend()).mendCommand(paths, options, context)));
  program
    .command("language-server")
    .description("serve an editor on standard input and output, by the Language Server Protocol")
    .option("--stdio", "as it is; some editors add it to every server")
    .addOption(
      // Language Server Protocol 3.17, Implementation Considerations. The library ends the server when that process is gone.
      new Option("--clientProcessId <id>", "the process of the editor: the server ends with it"),
    )
    .addHelpText("after", LANGUAGE_SERVER_HELP)
    .action(async () => done(await (await commands.languageServer()).languageServerCommand(version)));
  program
    .command("collate")
    .description("join the records of several docs repositories into one")
    .argument("<records...>", "records, as `plumbmark inspect --as json` prints them")
    .addOption(new Option("--as <form>", "the form to print in").choices(["text", "json", "markdown"]).default("text"))
    .addHelpText("after", COLLATE_HELP)
    .action(async (paths, options) => done(await (await commands.collate()).collateCommand(paths, options, context)));
  program
    .command("hook")
    .description("put a pre-commit hook of git in place that inspects what is staged")
    .option("--remove", "take it away again")
    .addHelpText("after", HOOK_HELP)
    .action(async (options) => done(await (await commands.hook()).hookCommand(options, context)));
  return program;
}
