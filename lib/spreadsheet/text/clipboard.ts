import { neutraliseText, readNeutralised } from './formula'

/** Cells as spreadsheet programs put them on the clipboard: tabs between cells, line ends between rows, quotes where needed. */
export function writeClipboard(cells: readonly (readonly string[])[]): string {
  return cells
    .map((row) =>
      row
        .map((text) => neutraliseText(text))
        .map((text) => (/[\t\r\n"]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text))
        .join('\t'),
    )
    .join('\n')
}

/** What a spreadsheet program put there. A quotation mark counts only at the beginning of a cell. */
export function readClipboard(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let at = 0
  while (at < text.length) {
    const quoted = text[at] === '"' ? /^"((?:[^"]|"")*)"(?=[\t\r\n]|$)/.exec(text.slice(at)) : null
    const plain = quoted === null ? (/^[^\t\r\n]*/.exec(text.slice(at))?.[0] ?? '') : ''
    row.push(readNeutralised(quoted === null ? plain : (quoted[1] ?? '').replaceAll('""', '"')))
    at += quoted === null ? plain.length : quoted[0].length
    const end = /^(\t|\r\n|\r|\n)/.exec(text.slice(at, at + 2))?.[0]
    at += end?.length ?? 0
    if (end === '\t') {
      // A tab at the very end leaves an empty cell behind it.
      if (at === text.length) row.push('')
      continue
    }
    rows.push(row)
    row = []
  }
  if (row.length > 0) rows.push(row)
  return rows
}
