/** The command could not be carried out (exit status 2): what is wrong, and what to do about it. */
export class Trouble extends Error {
  override readonly name = "Trouble";

  constructor(
    readonly says: string,
    readonly mend: string,
  ) {
    super(`${says}\n${mend}`);
  }
}
