// Markdown tables with columns of one width, and numbers with the digits that mean something.

/** A table; numbers should come as text already. */
export function table(head, rows) {
  const all = [head, ...rows].map((row) => row.map(String));
  const widths = head.map((_, k) => Math.max(3, ...all.map((row) => row[k].length)));
  const line = (row) => `| ${row.map((cell, k) => cell.padEnd(widths[k])).join(" | ")} |`;
  return [
    line(all[0]),
    `| ${widths.map((w) => "-".repeat(w)).join(" | ")} |`,
    ...all.slice(1).map(line),
  ].join("\n");
}

const grouped = (text) => text.replace(/\B(?=(\d{3})+$)/g, ",");

/** Three significant digits, thousands grouped. */
export function digits(value) {
  if (value >= 100) return grouped(value.toFixed(0));
  return value.toFixed(value >= 10 ? 1 : 2);
}

/** How many times as long; what is below 1 is slower than the peer. */
export const times = (ratio) => `${digits(ratio)} ×`;

export const whole = (value) => grouped(String(Math.round(value)));
