/** Stands for every name an author may give. */
export const ANY = "any-name";
