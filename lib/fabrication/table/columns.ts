import {
  convertEnteredLength,
  findLengthUnit,
  getShownUnit,
  keptLength,
  type LengthUnit,
  parseLength,
  parseNumber,
  withUnitInHead,
} from '@/lib/engine/units'

/** A cell as text, as a person typed it or a file held it, and as it is written: text, number or nothing. */
export type TableCell = string | number | null

/** What a cell says, or why it cannot be taken. */
export type CellReading =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly reason: string }

/** Units that a sheet keeps its numbers in. */
export type CellUnit = 'um' | 'mm' | 'days' | 'm2'

/** A length, which a file may state in another unit. */
export type KeptLengthUnit = Extract<CellUnit, 'um' | 'mm'>

export const isKeptLength = (unit: string | null): unit is KeptLengthUnit => unit === 'um' || unit === 'mm'

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
  /** What its numbers count, as the heading of a file names it; null where that depends on the row, or they count nothing. */
  readonly unit: CellUnit | null
  /** @param stated  unit of length that the file's heading names, where it is not the sheet's own */
  readonly read: (text: string, stated?: LengthUnit) => CellReading
  /** @param chosen  unit of length that the reader chose; without it the sheet's own */
  readonly write: (row: R, chosen?: LengthUnit) => TableCell
}

export interface RowProblem {
  readonly field: string
  readonly message: string
}

/** A sheet as a grid of text. */
export interface FabricationTable<R> {
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
  // A cell of somebody else's sheet may hold two numbers: figures parted by a space are refused here, not read as thousands.
  const parsed = /\d\s\d/.test(withoutUnit) ? null : parseNumber(withoutUnit.replace(',', '.'))
  return parsed?.ok === true ? parsed.value : null
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
  unit: null as CellUnit | null,
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

/** A length as the sheet keeps it; one that carries its own unit (`1.4 mil`) goes by that, another by the unit that is stated. */
export function readLength(text: string, kept: KeptLengthUnit, stated: LengthUnit = kept): number | null {
  const bare = readNumber(text, stated)
  if (bare !== null) return keptLength(bare, stated, kept)
  const parsed = parseLength(text.trim().replace(/^([-+]?\d*),(\d+)/, '$1.$2'), stated)
  return parsed.ok ? keptLength(parsed.valueUm, 'um', kept) : null
}

/** A length in the unit that the reader chose, with every digit. */
export function writeLength(value: number, kept: KeptLengthUnit, chosen: LengthUnit = kept): number {
  return convertEnteredLength(value, kept, getShownUnit(kept, chosen))
}

/** `Thickness, mil`: the heading of a file names the unit of the numbers below it. */
export function headColumn<R>({ title, unit }: TableColumn<R>, chosen?: LengthUnit): string {
  if (unit === null) return title
  return isKeptLength(unit)
    ? withUnitInHead(title, getShownUnit(unit, chosen ?? unit))
    : `${title}, ${OTHER_UNITS[unit]}`
}

const OTHER_UNITS = { days: 'days', m2: 'm²' } as const

/** The unit that a heading states for a column; undefined where the heading is another column's. */
export function readHead<R>(
  column: TableColumn<R>,
  heading: string,
): { readonly stated: LengthUnit | null } | undefined {
  const fold = (text: string) => text.trim().toLowerCase()
  const at = heading.lastIndexOf(',')
  if ([column.title, column.key, headColumn(column)].some((name) => fold(name) === fold(heading)))
    return { stated: null }
  if (at === -1 || !isKeptLength(column.unit) || fold(heading.slice(0, at)) !== fold(column.title)) return undefined
  const stated = findLengthUnit(heading.slice(at + 1))
  return stated === null ? undefined : { stated }
}

export function numberColumn<R>(column: ColumnBase<R> & { readonly unit?: CellUnit }): TableColumn<R> {
  const { unit = null, ...rest } = column
  return {
    ...base<R>(rest),
    hint: rest.hint ?? unit ?? '',
    unit,
    isNumeric: true,
    read: (text, stated) => {
      if (text.trim() === '') return taken(null)
      const value = isKeptLength(unit) ? readLength(text, unit, stated) : readNumber(text, unit ?? '')
      return value === null
        ? refused(`"${text.trim()}" is not a number${unit === null ? '' : ` in ${unit}`}`)
        : taken(value)
    },
    write: (row, chosen) => {
      const value = present(row, column.key)
      return typeof value === 'number' && isKeptLength(unit) ? writeLength(value, unit, chosen) : value
    },
  }
}

/** A longer list is a dictionary, which no message repeats. */
const MOST_LISTED = 12

/** A word of a list, by itself or by its name. */
export function choiceColumn<R>(
  column: ColumnBase<R> & {
    readonly names: Readonly<Record<string, string>>
    readonly isNullable?: boolean
    /** Names that files of earlier versions hold, in small letters. */
    readonly formerNames?: Readonly<Record<string, string>>
  },
): TableColumn<R> {
  const { names, isNullable = false, formerNames = {}, ...rest } = column
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
      if (Object.hasOwn(formerNames, wanted)) return taken(formerNames[wanted])
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
