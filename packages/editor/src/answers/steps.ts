/**
 * An answer that is worked out file by file, since it is about the whole repository: between two of them whoever runs it
 * may look at something else, or let it be because nobody wants it any more.
 */
export type InSteps<T> = Generator<undefined, T, undefined>;
