// The log that `buildplan times` and `buildplan learn` read: kind, count, minutes (RFC 4180).
import type { Step } from "./data";

function cell(text: string): string {
  // a spreadsheet must not take a note for a formula (the rule of source/csv_text.py)
  const within = text.replace(/([;\t\r\n]\s*)(?='*[=+@＝＋－＠-])/g, "$1'");
  const plain = /^(?:[\s']*[=+@＝＋－＠-]|[ ']*[\t\r\n])/.test(text) ? `'${within}` : within;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** A row for each step that was timed, of the kind of work that gives it its name. */
export function logOf(
  steps: readonly Step[],
  minutes: Readonly<Record<string, number>>,
  notes: Readonly<Record<string, string>>,
): string {
  const rows = [["kind", "count", "minutes", "step", "note"]];
  for (const step of steps) {
    const took = minutes[step.number];
    const count = step.work[step.kind];
    if (!took || !count) continue;
    rows.push([step.kind, String(count), String(took), String(step.number), notes[step.number] ?? ""]);
  }
  return rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

/** Notes of the steps, a line each, for reading. */
export function notesOf(steps: readonly Step[], notes: Readonly<Record<string, string>>, title: (step: Step) => string): string {
  return steps
    .filter((step) => notes[step.number])
    .map((step) => `${step.number}. ${title(step)}\n${notes[step.number]}\n`)
    .join("\n");
}
