/** First characters of a text cell that a spreadsheet would run as a formula. */
const FORMULA = /^[=+\-@\t\r]/

/**
 * A table as CSV (RFC 4180): CRLF, quotes where they are needed. Numbers stay numbers; a text that a spreadsheet would
 * take for a formula gets an apostrophe.
 */
export function toCsv(header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return [header, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

function cell(value: string | number): string {
  if (typeof value === 'number') return String(value)
  const text = FORMULA.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
