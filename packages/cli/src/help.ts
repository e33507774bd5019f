export const EXIT = `
Exit status
  0  every document is ready
  1  at least one document is not ready
  2  the command could not be carried out; the message says why
A command that is ended from outside (Ctrl-C, a signal) ends by that signal, which a shell gives as 128 and its number;
what it was writing is then as before, or whole.

Begin with \`plumbmark start my-builds\`, then \`plumbmark inspect my-builds\`.
\`plumbmark help inspect\` explains a command.`;

export const INSPECT_HELP = `
A docs repository is the topmost folder with house-standard.yaml and everything below it; a house-standard.yaml deeper
in the tree adds to the one above and may only make things stricter. Its build documents are the
Markdown files whose front matter has the key \`build\`. Without a house standard the defaults apply.

A document is ready when no check of a \`shall\` rule fails or is open. A check is open when something it needs is
not written down; in a document whose status is draft, open checks do not count.

Examples
  plumbmark inspect                            the docs repository you are in
  plumbmark inspect builds/banner.md           one document
  plumbmark inspect --every builds/banner.md   also the checks that hold
  plumbmark inspect --staged                   what a commit made now would change
  plumbmark inspect --since origin/main        what this branch changes
  plumbmark inspect --as sarif                 for a forge or an editor: SARIF 2.1.0
  plumbmark inspect --as gnu                   a line a check, file:line:column
  plumbmark inspect --as markdown              a summary for a comment in a review
  plumbmark inspect --as json > record.json    the record, for another program
  plumbmark inspect --against v1               what became ready or broke since a revision, and what changed in
                                               weight, power and margin
  plumbmark inspect --standard new.yaml --against house-standard.yaml
                                               which documents change verdict by a new edition`;

export const WORKINGS_HELP = `
Examples
  plumbmark workings builds/banner.md
  plumbmark workings builds/banner.md power.circuits.stage-4
  plumbmark workings --as json builds/banner.md`;

export const TAKEOFF_HELP = `
Parts come with spares and masses, cables with their lengths and a label for both ends. Quantities are in the units
of the document; the unit stands in the head of the column. What is not written down reads "not stated".

CSV follows RFC 4180 and is one table: the parts when no schedule is named. A text that begins with = + - @ or a tab
gets an apostrophe in front, so that no spreadsheet takes it for a formula; numbers are left as they are.

\`prices\` is a quotation's list: number times price of each part that has one in the catalogue, exact and without tax.
\`shortfall\` is what a build, or several together, need that is not free on their days with the way there and back: what
others take then counts, drafts of others do not. Panels of another batch never fill up a face.

Exit status: 0 printed; 1 printed, but something is short, or the document has mistakes, so something may be left out;
2 not carried out.

Examples
  plumbmark takeoff builds/banner.md
  plumbmark takeoff builds/banner.md builds/strips.md shortfall
  plumbmark takeoff builds/banner.md hangs
  plumbmark takeoff builds/banner.md cables --as csv > cables.csv`;

export const DRAFT_HELP = `
A wish is a file of YAML that says what somebody wants: where, when, what it shows, how large, how it is held. What it
leaves unsaid is told first. Every figure of an option comes from the formulas that judge a build, and every option was
inspected as it is written: no requirement fails, and what is not known is open. A draft is never ready: ratings and
letters of structures, approvals, breakers, wiring and procedures are left to the people who answer for them.

Exit status: 0 at least one option needs nothing that is not there; 1 none does; 2 not carried out.

Examples
  plumbmark draft wishes/spring-banner.yaml
  plumbmark draft wishes/spring-banner.yaml --option 2 --to builds/spring.md
  plumbmark draft wishes/spring-banner.yaml --every --within 5 s
  plumbmark draft wishes/*.yaml --together     the least to buy that serves them all
  plumbmark draft wishes/spring-banner.yaml --sheet options.html
  plumbmark draft --like builds/banner.md --width "12 ft"
  plumbmark draft wishes/spring-banner.yaml --as json > options.json`;

export const RULES_HELP = `
Lists what is in force in the folder you are in: by the house standard of the docs repository, and by those of folders
above you. Behind each value stands where it comes from: the default, the practice, or a file and its line.

Examples
  plumbmark rules
  plumbmark rules power.circuit-load
  plumbmark rules --as markdown > rules.md`;

export const PUBLISH_HELP = `
Examples
  plumbmark publish --to site
  plumbmark publish my-builds --to public
  plumbmark publish --to site --watch`;

export const START_HELP = `
A folder becomes a docs repository: a house standard in the practice asked for, a parts catalogue, stock, some invented
builds, package.json with this version pinned, .gitignore and what a pipeline runs. The folder may be new, empty, a
repository of git, or have a package.json; nothing that is there is changed. In a docs repository, or below one, it is
refused.

After \`build\` it writes a new draft into the docs repository you are in: what the catalogue and the house standard tell,
and every other key with what it means and where it is found. After \`part\` it writes such a form for a new part,
after \`venue\` one for a survey and the same as a page to print, with a box for each answer, and
after \`rule\` a new rule of your own: the rule, a document that holds, one that fails and one that is open, and a test
that passes.

Examples
  plumbmark start my-builds
  plumbmark start . --practice iec
  plumbmark start build spring-banner --venue marlow-quay-hall
  plumbmark start venue marlow-quay-hall
  plumbmark start part tile-new
  plumbmark start part rope-new --kind rope
  plumbmark start rule two-riggers`;

export const APPROVE_HELP = `
Inspects the document with the approval in it, and writes that only if the document is ready then: \`approved\` with the
name, today's day, and a code of the content. Every other byte stays as it is. The code is made of the document and of
what it rests on: the parts and lots it names, and the house standards. When any of it is changed, the approval ends;
ticked tasks and the step to \`as-built\` change nothing. The code tells that something was changed, not who did it.

Exit status: 0 written; 1 refused, and nothing was changed; 2 not carried out.

Examples
  plumbmark approve builds/banner.md --by "M. Finch"`;

export const MEND_HELP = `
Puts right what has one answer: a figure in the text that is quoted from a value, to the precision it is written to; a
misspelt key with one near word; a decimal comma, unless three digits follow; a range written with a hyphen; a tab; the
number of attachments; the shortest cable in stock that reaches. Comments and every other byte stay. What has several
answers, or needs a person (a name, a day, a rating, a letter), is left alone: editors offer it.

A change ends the approval of every document that rests on what was changed. A file that is changed meanwhile is left
alone. Without a path everything is mended: documents, parts catalogue and stock.

Exit status: 0 done, or nothing to do; 1 with --show, when something would be changed; 2 something was not carried out.

Examples
  plumbmark mend --show                        what would be changed, as a difference; nothing is written
  plumbmark mend builds/banner.md`;

export const LANGUAGE_SERVER_HELP = `
An editor starts it; it is nothing to type. It speaks the Language Server Protocol 3.17: findings while one writes,
completion, what a figure comes to with its working, mends, names and where they are used. It reads the docs repository
a file belongs to, and of open files the text as it is in the editor. Rules of plugins run in processes of their own and
are told later than the rest. How an editor is set up stands in the guide, under Editors.`;

export const COLLATE_HELP = `
Each document is listed under the name of its record. A name that two repositories give a build stands against both.
What a record does not hold cannot be told: lots are compared within a repository only.

Examples
  plumbmark inspect --as json north > north.json
  plumbmark collate north.json south.json
  ls repositories | xargs -P 4 -I% sh -c 'plumbmark inspect --as json repositories/% > records/%.json'
  plumbmark collate --as markdown records/*.json`;

export const HOOK_HELP = `
Run it in the docs repository. It puts a hook before commits, and one before merges that make a commit. What no hook can
guard it says: merges that only move a branch forward, rebases, cherry-picks, and what others push. A changed plugin, or
a lock file of what it uses, has all documents judged. It never overwrites a hook that is there already, and honours core.hooksPath.
In an emergency, \`git commit --no-verify\` commits without it.

Examples
  plumbmark hook
  plumbmark hook --remove`;
