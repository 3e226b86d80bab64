import { saveFile } from "./save-file.ts";

/** Hands a text to whoever asked for it, as a download. */
export function saveText({
  name,
  text,
  type,
}: {
  readonly name: string;
  readonly text: string;
  readonly type: string;
}): void {
  saveFile({ name, bytes: new TextEncoder().encode(text), type });
}
