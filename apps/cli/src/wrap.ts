/** Screen width that the text output keeps to. */
const COLUMNS = 80;

/** Breaks a text at its spaces so that no line is longer than 80 columns; a no-break space never ends a line. */
export function wrap(
  text: string,
  { indent = "", hanging = indent }: { indent?: string; hanging?: string } = {},
): string {
  const lines: string[] = [];
  let line = indent;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && line.length + 1 + word.length > COLUMNS) {
      lines.push(line);
      line = hanging;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line].join("\n").replaceAll("\u00a0", " ");
}
