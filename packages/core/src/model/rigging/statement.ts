import { isDay } from "../../document/days.js";
import { affirmed, written } from "../../document/nothing-written.js";
import { person } from "../../document/person.js";
import type { DesignSource } from "../reading/design-source.js";
import { paperAt } from "../reading/paper.js";
import { stayOf } from "../stock/bookings.js";

/** One thing that is asked of a statement: it holds, fails, or cannot be told. */
export interface StatementCheck {
  readonly path: string;
  readonly holds: boolean | undefined;
  readonly says: string;
  readonly mend: string;
  /** What has to be written down before it can be told, where that is not the thing itself. */
  readonly needs?: string;
}

/** Something a person states in writing: who, with which licence, on which day, in which file, until when. */
export class Statement {
  constructor(
    readonly build: DesignSource,
    readonly path: string,
    readonly label: string,
  ) {}

  /** Whether anything is written where it belongs. */
  get exists(): boolean {
    return this.build.reader.keys(this.path).length > 0;
  }

  /** A text of it; undefined where nothing is written, a placeholder included. */
  text(key: string): string | undefined {
    return written(this.build.reader.data(`${this.path}.${key}`));
  }

  /** Who states it, on which day, in which file and until when, as far as they are asked for. */
  asked(licensed: boolean): readonly StatementCheck[] {
    return [this.#by(), ...(licensed ? [this.#licence(), this.#file()] : []), this.#day(), this.#until()];
  }

  #open(key: string, what: string): StatementCheck {
    const path = `${this.path}.${key}`;
    return {
      path,
      holds: undefined,
      says: `${this.label}: ${what} is not written down.`,
      mend: `Write it under \`${path}\`.`,
    };
  }

  /** It is written, and the days on site are not. */
  #undated(key: string, says: string): StatementCheck {
    return {
      path: `${this.path}.${key}`,
      holds: undefined,
      says: `${this.label}: ${says}: the days on site are not known.`,
      mend: "Write them under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
      needs: "on-site",
    };
  }

  #is(key: string, holds: boolean | undefined, says: string, mend = ""): StatementCheck {
    return { path: `${this.path}.${key}`, holds, says: `${this.label}: ${says}`, mend };
  }

  #by(): StatementCheck {
    const by = this.text("by");
    if (by === undefined) return this.#open("by", "who states it");
    return person(by) === undefined
      ? this.#is("by", false, `\`${by}\` names no person.`, "Write the name of the person who signs it.")
      : this.#is("by", true, `it is stated by ${by}.`);
  }

  #licence(): StatementCheck {
    const licence = affirmed(this.build.reader.data(`${this.path}.licence`));
    return licence === undefined
      ? this.#open("licence", "the licence of who states it")
      : this.#is("licence", true, `the licence is ${licence}.`);
  }

  #file(): StatementCheck {
    const file = this.text("file");
    if (file === undefined) return this.#open("file", "the file it is in");
    const filed = paperAt(this.build, this.path)?.filed;
    if (filed === undefined)
      return this.#is(
        "file",
        undefined,
        `whether \`${file}\` is there cannot be told: nobody looked for papers.`,
        "Inspect the docs repository it is in.",
      );
    return this.#is(
      "file",
      filed,
      filed ? `\`${file}\` is there.` : `\`${file}\` is not among the papers of the repository.`,
      "Put the signed letter there, or correct the path.",
    );
  }

  #day(): StatementCheck {
    const [day, stay] = [this.text("on"), stayOf(this.build.reader.data("on-site"))];
    if (day === undefined) return this.#open("on", "its day");
    if (!isDay(day)) return this.#is("on", false, `\`${day}\` is no day.`, "Write the day as 2027-03-05.");
    if (!stay) return this.#undated("on", "whether its day is before the days on site cannot be told");
    return this.#is(
      "on",
      day <= stay.from,
      day <= stay.from ? `it is of ${day}.` : `it is of ${day}, after the first day on site, ${stay.from}.`,
      "Have it stated before anything is built.",
    );
  }

  #until(): StatementCheck {
    const [until, stay] = [this.text("until"), stayOf(this.build.reader.data("on-site"))];
    if (until === undefined) return this.#open("until", "until when it is good");
    if (until === "no-end") return this.#is("until", true, "it has no end.");
    if (!isDay(until)) return this.#is("until", false, `\`${until}\` is no day.`, "Write a day, or `no-end`.");
    if (!stay) return this.#undated("until", "whether it lasts over the days on site cannot be told");
    // A build that stays is asked again on every day it is looked at.
    const { today } = this.build.context;
    const last = stay.to ?? (today > stay.from ? today : stay.from);
    return this.#is(
      "until",
      until >= last,
      until >= last ? `it is good until ${until}.` : `it is good until ${until}; the build stands there on ${last}.`,
      "Have it stated for as long as the build is there.",
    );
  }
}
