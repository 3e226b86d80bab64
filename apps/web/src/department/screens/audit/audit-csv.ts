import type { AuditEntry } from "@steelyard/records/department";

/** What an entry says beside who, what and on what: "rows 12, from 2026-01-01". */
export function detailOf({ detail }: Pick<AuditEntry, "detail">): string {
  return Object.entries(detail)
    .map(([name, value]) => `${name} ${value}`)
    .join(", ");
}

/** The log as a table, RFC 4180; nothing in it is taken for a formula by a spreadsheet. */
export function auditCsv(entries: readonly AuditEntry[]): string {
  const rows = entries.map(({ position, at, actor, actorName, action, subject, detail }) =>
    [String(position), at, actor, actorName ?? "", action, subject, JSON.stringify(detail)]
      .map(cell)
      .join(","),
  );
  return `${["position,at,actor,actor_name,action,subject,detail", ...rows].join("\r\n")}\r\n`;
}

function cell(text: string): string {
  // A leading sign makes a formula of a cell in spreadsheets; an apostrophe keeps it text.
  const plain = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
