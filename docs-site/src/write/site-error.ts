/** The site cannot be written there: what is wrong, for the person who asked. */
export class SiteError extends Error {
  constructor(
    message: string,
    readonly mend = "Name a new or empty folder, or one that was published before.",
  ) {
    super(message);
  }
}
