/** A cell as it is written: text, a number that stays a number, or nothing. */
export type WrittenCell = string | number | null

/** Where a cell stands in a file, both counted from 1 as spreadsheet programs count them. */
export interface CellPlace {
  readonly row: number
  readonly column: number
}

/** What a file holds, as text. Cells that cannot be taken are named; their text is empty. */
export interface Grid {
  readonly rows: readonly (readonly string[])[]
  readonly refused: readonly (CellPlace & { readonly reason: string })[]
}

export type GridReading = { readonly ok: true; readonly grid: Grid } | { readonly ok: false; readonly reason: string }

/** Bounds of what is read at all; far above any sheet that is kept here. */
export const GRID_LIMITS = {
  fileBytes: 10_000_000,
  unpackedBytes: 60_000_000,
  rows: 20_000,
  columns: 60,
  cellCharacters: 4000,
} as const

/** The letters by which spreadsheet programs name a column: 1 is A, 27 is AA. */
export function nameColumn(column: number): string {
  const rest = Math.floor((column - 1) / 26)
  return (rest === 0 ? '' : nameColumn(rest)) + String.fromCharCode(65 + ((column - 1) % 26))
}

/** Cuts off what no cell is in, and refuses what is beyond the bounds. */
export function boundGrid(grid: Grid): GridReading {
  const { rows, columns, cellCharacters } = GRID_LIMITS
  const trimmed = grid.rows.map((row) => {
    let length = row.length
    while (length > 0 && row[length - 1] === '') length -= 1
    return row.slice(0, length)
  })
  while (trimmed.at(-1)?.length === 0) trimmed.pop()
  if (trimmed.length > rows) return { ok: false, reason: `It has ${trimmed.length} rows; at most ${rows} are read.` }
  const widest = trimmed.reduce((most, row) => Math.max(most, row.length), 0)
  if (widest > columns) return { ok: false, reason: `It has ${widest} columns; at most ${columns} are read.` }
  const refused = [...grid.refused]
  const kept = trimmed.map((row, rowIndex) =>
    row.map((text, columnIndex) => {
      if (text.length <= cellCharacters) return text
      const reason = `has ${text.length} characters; at most ${cellCharacters} are read`
      refused.push({ row: rowIndex + 1, column: columnIndex + 1, reason })
      return ''
    }),
  )
  return { ok: true, grid: { rows: kept, refused } }
}
