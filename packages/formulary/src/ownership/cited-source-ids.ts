/** The id of every source that a citation below the value names. */
export function citedSourceIds(value: unknown): ReadonlySet<string> {
  const ids = new Set<string>();
  const visit = (part: unknown): void => {
    if (typeof part !== "object" || part === null) return;
    if ("sourceId" in part && typeof part.sourceId === "string") ids.add(part.sourceId);
    for (const member of Object.values(part)) visit(member);
  };
  visit(value);
  return ids;
}
