/** A column of a text table: numbers right, words left. */
export interface Column {
  readonly title: string
  readonly align: 'left' | 'right'
}

/** Aligned columns with a rule under the titles; two spaces between columns. */
export function formatTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const widths = columns.map(({ title }, at) => Math.max(title.length, ...rows.map((row) => (row[at] ?? '').length)))
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ align }, at) => {
        const cell = cells[at] ?? ''
        const width = widths[at] ?? 0
        return align === 'right' ? cell.padStart(width) : cell.padEnd(width)
      })
      .join('  ')
      .trimEnd()
  return [
    line(columns.map(({ title }) => title)),
    widths.map((width) => '-'.repeat(width)).join('  '),
    ...rows.map(line),
  ]
}

/** Breaks a sentence at spaces; every line after the first is indented. A word longer than the width stays whole. */
export function wrapText(text: string, width: number, indent: string): string[] {
  const lines: string[] = []
  let current = ''
  for (const word of text.split(/\s+/)) {
    if (current === '') current = word
    else if (current.length + 1 + word.length <= width) current += ` ${word}`
    else {
      lines.push(current)
      current = indent + word
    }
  }
  if (current.trim() !== '') lines.push(current)
  return lines
}
