/** Something wrong in a JSON text, at an offset in it. */
export interface JsonFault {
  readonly position: number;
  readonly message: string;
}

const SPACE = /[ \t\n\r]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids exactly these inside a string
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const SCALAR = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/**
 * Fields that are there twice, and the place at which the text is no longer JSON (RFC 8259).
 *
 * Engines differ in whether they name the place, and none minds a field that is there twice.
 */
export function scanJson(text: string): JsonFault[] {
  const faults: JsonFault[] = [];
  let position = 0;

  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = position;
    const match = pattern.exec(text)?.[0];
    position += match?.length ?? 0;
    return match;
  };
  const takeMark = (mark: string): boolean => {
    take(SPACE);
    if (text[position] !== mark) return false;
    position += 1;
    take(SPACE);
    return true;
  };
  const expected = (what: string): never => {
    const found =
      position < text.length ? `"${text.slice(position, position + 12).split("\n")[0]}"` : "the end";
    throw new SyntaxError(`is not JSON: expected ${what}, found ${found}`);
  };

  const value = (): void => {
    take(SPACE);
    if (takeMark("{")) members("}", field(new Set()));
    else if (takeMark("[")) members("]", value);
    else if (take(STRING) === undefined && take(SCALAR) === undefined) expected("a value");
    take(SPACE);
  };
  const members = (end: "}" | "]", member: () => void): void => {
    if (takeMark(end)) return;
    do member();
    while (takeMark(","));
    if (!takeMark(end)) expected(`"," or "${end}"`);
  };
  const field = (names: Set<string>) => (): void => {
    take(SPACE);
    const start = position;
    const written = take(STRING) ?? expected("the name of a field in quotation marks");
    const name = JSON.parse(written) as string;
    if (names.has(name)) faults.push({ position: start, message: `field "${name}" is there twice` });
    names.add(name);
    if (!takeMark(":")) expected('":"');
    value();
  };

  try {
    value();
    if (position < text.length) expected("nothing more");
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    faults.push({ position, message: error.message });
  }
  return faults;
}
