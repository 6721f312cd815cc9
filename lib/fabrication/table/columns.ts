/** A cell as text, as a person typed it or a file held it, and as it is written: text, number or nothing. */
export type TableCell = string | number | null

/** What a cell says, or why it cannot be taken. */
export type CellReading =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly reason: string }

/** One column of a sheet. `key` is the field of the row that it fills. */
export interface TableColumn<R> {
  readonly key: keyof R & string
  readonly title: string
  /** Unit or form of what goes in, for the heading's second line. */
  readonly hint: string
  readonly isNumeric: boolean
  /** Suggestions for a cell: names that are understood. */
  readonly choices: readonly string[]
  readonly isRequired: boolean
  readonly widthRem: number
  readonly read: (text: string) => CellReading
  readonly write: (row: R) => TableCell
}

export interface RowProblem {
  readonly field: string
  readonly message: string
}

/** A sheet as a grid of text. */
export interface SheetTable<R> {
  readonly columns: readonly TableColumn<R>[]
  /** The row from what its cells said, or what is wrong with it on its own. */
  readonly readRow: (
    fields: Readonly<Record<string, unknown>>,
  ) => { readonly ok: true; readonly row: R } | { readonly ok: false; readonly problems: readonly RowProblem[] }
  /** What is wrong with rows that are each well: such as two that say the same. */
  readonly findProblemsAcross: (rows: readonly R[]) => readonly (RowProblem & { readonly row: number })[]
  /** What a row is about, so that two versions can be compared. */
  readonly keyOf: (row: R) => string
}

const taken = (value: unknown): CellReading => ({ ok: true, value })
const refused = (reason: string): CellReading => ({ ok: false, reason })

/** A number with a point or a comma for its decimals, with or without its unit. Thousands are not separated. */
export function readNumber(text: string, unit: string): number | null {
  const bare = text.trim().replace(/\s+/g, ' ')
  const withoutUnit =
    unit !== '' && bare.toLowerCase().endsWith(unit.toLowerCase()) ? bare.slice(0, -unit.length).trim() : bare
  if (!/^[-+]?(\d+([.,]\d*)?|[.,]\d+)(e[-+]?\d+)?$/i.test(withoutUnit)) return null
  const value = Number(withoutUnit.replace(',', '.'))
  return Number.isFinite(value) ? value : null
}

interface ColumnBase<R> {
  readonly key: keyof R & string
  readonly title: string
  readonly hint?: string
  readonly isRequired?: boolean
  readonly widthRem: number
}

const base = <R>({ hint = '', isRequired = false, ...column }: ColumnBase<R>) => ({
  ...column,
  hint,
  isRequired,
  choices: [] as readonly string[],
})

const present = <R>(row: R, key: keyof R): TableCell => {
  const value = row[key]
  return typeof value === 'number' || typeof value === 'string' ? value : null
}

export function textColumn<R>(
  column: ColumnBase<R> & { readonly isNullable?: boolean; readonly choices?: readonly string[] },
): TableColumn<R> {
  const { isNullable = false, choices = [], ...rest } = column
  return {
    ...base<R>(rest),
    choices,
    isNumeric: false,
    read: (text) => taken(text.trim() === '' && isNullable ? null : text.trim()),
    write: (row) => present(row, column.key),
  }
}

export function numberColumn<R>(column: ColumnBase<R> & { readonly unit?: string }): TableColumn<R> {
  const { unit = '', ...rest } = column
  return {
    ...base<R>(rest),
    hint: rest.hint ?? unit,
    isNumeric: true,
    read: (text) => {
      if (text.trim() === '') return taken(null)
      const value = readNumber(text, unit)
      return value === null
        ? refused(`"${text.trim()}" is not a number${unit === '' ? '' : ` in ${unit}`}`)
        : taken(value)
    },
    write: (row) => present(row, column.key),
  }
}

/** A longer list is a dictionary, which no message repeats. */
const MOST_LISTED = 12

/** A word of a list, by itself or by its name. */
export function choiceColumn<R>(
  column: ColumnBase<R> & { readonly names: Readonly<Record<string, string>>; readonly isNullable?: boolean },
): TableColumn<R> {
  const { names, isNullable = false, ...rest } = column
  const entries = Object.entries(names)
  return {
    ...base<R>(rest),
    choices: entries.map(([, name]) => name),
    isNumeric: false,
    read: (text) => {
      const wanted = text.trim().toLowerCase()
      if (wanted === '' && isNullable) return taken(null)
      const found = entries.find(([value, name]) => value.toLowerCase() === wanted || name.toLowerCase() === wanted)
      if (found !== undefined) return taken(found[0])
      if (entries.length > MOST_LISTED) return refused(`"${text.trim()}" is not in the dictionary`)
      const list = entries.map(([, name]) => name).join(', ')
      return refused(wanted === '' ? `is empty; it is one of: ${list}` : `"${text.trim()}" is none of: ${list}`)
    },
    write: (row) => {
      const value = row[column.key]
      return typeof value === 'string' ? (names[value] ?? value) : null
    },
  }
}

const YES = ['yes', 'y', 'true', '1', 'x']
const NO = ['no', 'n', 'false', '0']

export function yesNoColumn<R>(column: ColumnBase<R>): TableColumn<R> {
  return {
    ...base<R>(column),
    choices: ['yes', 'no'],
    isNumeric: false,
    read: (text) => {
      const wanted = text.trim().toLowerCase()
      if (YES.includes(wanted)) return taken(true)
      return NO.includes(wanted)
        ? taken(false)
        : refused(wanted === '' ? 'is empty; it is yes or no' : `"${text.trim()}" is neither yes nor no`)
    },
    write: (row) => (row[column.key] === true ? 'yes' : 'no'),
  }
}
