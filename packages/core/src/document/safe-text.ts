/**
 * Documents, file names and what plugins print are other people's text: a control character in it moves a terminal's
 * cursor or hides a line, and a mark of direction (Unicode 16, 23.2, UAX 9) turns the order in which a reader sees it.
 * These are all controls but the line feed and the tab, and everything that sets a direction of reading.
 */
export const UNSAFE_TEXT = /[^\P{Cc}\n\t]|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** A text that moves no cursor and turns no direction: what would is replaced by U+FFFD. */
export const safeText = (text: string): string => text.replace(UNSAFE_TEXT, "\ufffd");
