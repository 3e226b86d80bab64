/** Digits and letters that are not taken for one another when they are read aloud or typed: no I, L, O or U. */
const signs = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/** Both numbers leave no remainder here, so one wrong sign or two exchanged ones are noticed. */
const askDivisor = 29;
const answerDivisor = 127;

/** What the second reader read; the arm may be missing. */
export interface Reading {
  readonly lengthCm: number;
  readonly armMm?: number | undefined;
}

/** A number for one asking, 0 to 1023: an answer to another asking, perhaps for another child, is refused. */
export type Tag = number;

/** The code of an asking, three signs. */
export function askCode(tag: Tag): string {
  const check = (askDivisor - ((tag * 32) % askDivisor)) % askDivisor;
  return write(tag * 32 + check, 3);
}

/** The tag of an asking; undefined where the code is mistyped. */
export function readAskCode(text: string): Tag | undefined {
  const value = read(text, 3);
  return value === undefined || value % askDivisor !== 0 ? undefined : Math.floor(value / 32);
}

/** The code of an answer, eight signs: the asking, the length to 1 mm and the arm to 0.5 mm. */
export function answerCode({ tag, lengthCm, armMm = 0 }: Reading & { readonly tag: Tag }): string {
  const value = (tag * 4096 + Math.round(lengthCm * 10)) * 2048 + Math.round(armMm * 2);
  const check = (answerDivisor - ((value * 128) % answerDivisor)) % answerDivisor;
  return write(value * 128 + check, 8);
}

export type Answer =
  | { readonly type: "reading"; readonly reading: Reading }
  /** It answers another asking. */
  | { readonly type: "other-asking" }
  | { readonly type: "mistyped" };

/** What an answer says; it may stand inside a longer text, as a camera reads it. */
export function readAnswerCode(text: string, tag: Tag): Answer {
  const value = read(text, 8);
  if (value === undefined || value % answerDivisor !== 0) return { type: "mistyped" };
  const body = Math.floor(value / 128);
  const half = body % 2048;
  const rest = Math.floor(body / 2048);
  if (Math.floor(rest / 4096) !== tag) return { type: "other-asking" };
  const lengthCm = (rest % 4096) / 10;
  return { type: "reading", reading: half === 0 ? { lengthCm } : { lengthCm, armMm: half / 2 } };
}

function write(value: number, length: number): string {
  let text = "";
  for (let rest = value; text.length < length; rest = Math.floor(rest / 32)) text = signs[rest % 32] + text;
  return text.length > 4 ? `${text.slice(0, 4)} ${text.slice(4)}` : text;
}

function read(text: string, length: number): number | undefined {
  const plain = text.toUpperCase().replaceAll("O", "0").replaceAll(/[IL]/g, "1").replaceAll(/[\s-]/g, "");
  if (plain.length !== length) return undefined;
  let value = 0;
  for (const sign of plain) {
    const digit = signs.indexOf(sign);
    if (digit < 0) return undefined;
    value = value * 32 + digit;
  }
  return value;
}
