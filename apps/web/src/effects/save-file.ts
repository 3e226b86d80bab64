/** Hands a finished file to whoever asked for it, as a download. */
export function saveFile({ name, bytes, type }: { name: string; bytes: Uint8Array; type: string }): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken it up by the next turn.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
