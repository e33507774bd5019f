/**
 * A reader of CSV written from the grammar of RFC 4180, section 2, and of nothing else:
 *
 *   file        = [header CRLF] record *(CRLF record) [CRLF]
 *   record      = field *(COMMA field)
 *   field       = (escaped / non-escaped)
 *   escaped     = DQUOTE *(TEXTDATA / COMMA / CR / LF / 2DQUOTE) DQUOTE
 *   non-escaped = *TEXTDATA
 *   TEXTDATA    = %x20-21 / %x23-2B / %x2D-7E
 *
 * TEXTDATA is widened to everything but controls, comma and quote, as RFC 7111 does for UTF-8. Anything else throws.
 */
export function readCsv(file: string): readonly (readonly string[])[] {
  let at = 0;
  const refuse = (what: string): never => {
    throw new Error(`${what} at ${at}: ${JSON.stringify(file.slice(Math.max(0, at - 10), at + 10))}`);
  };
  const escaped = (): string => {
    let text = "";
    at += 1;
    while (at < file.length) {
      if (file[at] !== '"') text += file[at++];
      else if (file[at + 1] === '"') {
        text += '"';
        at += 2;
      } else {
        at += 1;
        return text;
      }
    }
    return refuse("a quote that is not closed");
  };
  const plain = (): string => {
    const found = /^[^",\p{Cc}]*/u.exec(file.slice(at))?.[0] ?? "";
    at += found.length;
    return found;
  };
  const record = (): readonly string[] => {
    const fields: string[] = [];
    for (;;) {
      fields.push(file[at] === '"' ? escaped() : plain());
      if (file[at] !== ",") return fields;
      at += 1;
    }
  };
  const records: (readonly string[])[] = [];
  while (at < file.length) {
    records.push(record());
    if (at === file.length) break;
    if (file.startsWith("\r\n", at)) at += 2;
    else refuse("no CRLF");
  }
  return records;
}
