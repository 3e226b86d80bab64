import { renderSvg } from "@steelyard/paper";
import type { Block, ReportTable, StudyReport } from "./block.ts";

const STYLE = `:root{color-scheme:light dark}
body{font:16px/1.5 system-ui,sans-serif;max-width:60rem;margin:0 auto;padding:1rem}
.wide{overflow-x:auto}table{border-collapse:collapse;font-size:.875rem;margin:.25rem 0 1rem}
caption{text-align:left;font-weight:600;padding:.5rem 0}th,td{padding:.25rem .6rem;text-align:right;border-top:1px solid #8886;vertical-align:top}
th:first-child,td:first-child{text-align:left}thead th{border-top:0}figure{margin:1rem 0}figure svg{max-width:100%;height:auto;background:#fff}
figcaption{font-weight:600;padding:.25rem 0}`;

/** One self-contained HTML file: no script, no other file, figures inline. The same report gives the same bytes. */
export function writeHtml({ title, language, blocks }: StudyReport): string {
  return [
    "<!doctype html>",
    `<html lang="${language}">`,
    '<head><meta charset="utf-8"><meta name="viewport" content="width=device-width">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${escapeHtml(title)}</title><style>${STYLE}</style></head>`,
    `<body><main><h1>${escapeHtml(title)}</h1>`,
    ...blocks.map(writeBlock),
    "</main></body></html>",
    "",
  ].join("\n");
}

function writeBlock(block: Block): string {
  switch (block.type) {
    case "heading":
      return `<h${block.level}>${escapeHtml(block.text)}</h${block.level}>`;
    case "text":
      return `<p>${escapeHtml(block.text)}</p>`;
    case "list":
      return `<ul>${block.items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul>`;
    case "table":
      return writeTable(block.table);
    case "figure":
      return `<figure><figcaption>${escapeHtml(block.caption)}</figcaption>${renderSvg(block.page, { title: block.caption })}</figure>`;
  }
}

/** A table as HTML; its frame scrolls sideways where the screen is narrow. */
function writeTable({ caption, head, rows }: ReportTable): string {
  const body = rows.map(
    ([name = "", ...cells]) =>
      `<tr><th scope="row">${escapeHtml(name)}</th>${cells.map((cell) => `<td>${escapeHtml(cell)}</td>`).join("")}</tr>`,
  );
  const columns = head
    .map((cell) => (cell === "" ? "<td></td>" : `<th scope="col">${escapeHtml(cell)}</th>`))
    .join("");
  return `<div class="wide" tabindex="0" role="region" aria-label="${escapeHtml(caption)}"><table><caption>${escapeHtml(caption)}</caption><thead><tr>${columns}</tr></thead><tbody>\n${body.join("\n")}\n</tbody></table></div>`;
}

function escapeHtml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
