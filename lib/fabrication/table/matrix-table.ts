import { findLengthUnit, getShownUnit, type LengthUnit } from '@/lib/engine/units'
import { FAMILY_NAMES } from '../construction-family'
import {
  findChoice,
  findMatrixIssues,
  findParameter,
  findRowIssues,
  formatParameterValue,
  type MatrixRow,
  matrixRowSchema,
  TRADE_PARAMETERS,
  type TradeParameter,
} from '../matrix'
import { matrixRowKey } from '../sheets/row-keys'
import {
  choiceColumn,
  type FabricationTable,
  isKeptLength,
  numberColumn,
  type RowProblem,
  readLength,
  readNumber,
  type TableColumn,
  textColumn,
  writeLength,
} from './columns'

const PARAMETER_NAMES: Readonly<Record<string, string>> = Object.fromEntries(
  TRADE_PARAMETERS.map(({ key, name }) => [key, name]),
)

/** What parameters were called before, their questions: files that were saved then are still read. */
const FORMER_PARAMETER_NAMES = {
  ...Object.fromEntries(TRADE_PARAMETERS.map(({ key, question }) => [question.toLowerCase(), key])),
  'how little may the coverlay reach over the rim of a pad?': 'coverlay-registration',
}

/** Choices stand in one cell, parted by semicolons: names of materials have commas. */
const CHOICE_SEPARATOR = ';'

function limitColumn(key: 'comfortable' | 'stretch', title: string): TableColumn<MatrixRow> {
  return {
    ...textColumn<MatrixRow>({ key, title, hint: 'in the unit beside it', widthRem: 9 }),
    isNumeric: true,
    // What the text means depends on the parameter: the row reads it.
    write: (row) => {
      const limit = row[key]
      const parameter = findParameter(row.parameter)
      if (limit === null || typeof limit === 'number' || parameter === null)
        return limit === null ? null : String(limit)
      return limit.map((choice) => formatParameterValue(parameter, choice)).join(`${CHOICE_SEPARATOR} `)
    },
  }
}

const withNumbers = (column: TableColumn<MatrixRow>): TableColumn<MatrixRow> => ({
  ...column,
  write: (row, chosen) => {
    const limit = row[column.key]
    if (typeof limit !== 'number') return column.write(row)
    const unit = findParameter(row.parameter)?.unit ?? null
    return isKeptLength(unit) ? writeLength(limit, unit, chosen) : limit
  },
})

/** The unit belongs to the parameter: it is shown and written, and checked where a file states it. */
const UNIT_COLUMN = {
  ...textColumn<MatrixRow & { readonly unit: string }>({
    key: 'unit',
    title: 'Unit',
    hint: 'of the parameter',
    widthRem: 4.5,
  }),
  write: (row: MatrixRow, chosen?: LengthUnit) => {
    const parameter = findParameter(row.parameter)
    return parameter !== null && isKeptLength(parameter.unit) && chosen !== undefined
      ? getShownUnit(parameter.unit, chosen)
      : unitOf(parameter)
  },
} as unknown as TableColumn<MatrixRow>

/** As files write it; a choice has none. */
export function unitOf(parameter: TradeParameter | null): string | null {
  return parameter === null || parameter.unit === 'choice' ? null : UNIT_TEXTS[parameter.unit]
}

const UNIT_TEXTS = {
  um: 'um',
  mm: 'mm',
  count: 'count',
  ratio: 'ratio',
  deg: 'deg',
  pct: '%',
  degC: '°C',
  ohm: 'Ω',
} as const

export const MATRIX_TABLE: FabricationTable<MatrixRow> = {
  columns: [
    {
      ...choiceColumn<MatrixRow>({
        key: 'parameter',
        title: 'Parameter',
        widthRem: 24,
        isRequired: true,
        names: PARAMETER_NAMES,
        formerNames: FORMER_PARAMETER_NAMES,
      }),
    },
    withNumbers(limitColumn('comfortable', 'Comfortable')),
    withNumbers(limitColumn('stretch', 'Stretch')),
    UNIT_COLUMN,
    numberColumn({ key: 'layersFrom', title: 'Layers from', widthRem: 5 }),
    numberColumn({ key: 'layersTo', title: 'Layers to', widthRem: 5 }),
    numberColumn({ key: 'foilFromUm', title: 'Foil from', unit: 'um', widthRem: 5 }),
    numberColumn({ key: 'foilToUm', title: 'Foil to', unit: 'um', widthRem: 5 }),
    choiceColumn({ key: 'construction', title: 'Construction', widthRem: 10, names: FAMILY_NAMES, isNullable: true }),
    textColumn({ key: 'note', title: 'Note', widthRem: 16 }),
  ],
  readRow: ({ unit, comfortable, stretch, ...fields }) => {
    const parameter = findParameter(String(fields.parameter))
    if (parameter === null)
      return { ok: false, problems: [{ field: 'parameter', message: 'is not in the dictionary' }] }
    const problems: RowProblem[] = []
    const own = unitOf(parameter) ?? ''
    const stated = String(unit ?? '').trim()
    const statedLength = isKeptLength(parameter.unit) ? findLengthUnit(stated) : null
    if (stated !== '' && statedLength === null && foldUnit(stated) !== foldUnit(own)) {
      const message =
        own === '' ? `"${stated}": a choice has no unit` : `"${stated}": this parameter is stated in ${own}`
      problems.push({ field: 'unit', message })
    }
    const limits = Object.entries({ comfortable, stretch }).map(([field, text]) => {
      const reading = readLimit(parameter, String(text ?? ''), statedLength ?? undefined)
      if ('problem' in reading) problems.push({ field, message: reading.problem })
      return [field, 'problem' in reading ? null : reading.limit] as const
    })
    if (problems.length > 0) return { ok: false, problems }
    const parsed = matrixRowSchema.safeParse({ ...fields, ...Object.fromEntries(limits) })
    if (!parsed.success) {
      return {
        ok: false,
        problems: parsed.error.issues.map(({ path, message }) => ({ field: String(path[0] ?? 'parameter'), message })),
      }
    }
    const issues = findRowIssues(parsed.data)
    return issues.length === 0 ? { ok: true, row: parsed.data } : { ok: false, problems: issues }
  },
  findProblemsAcross: findMatrixIssues,
  keyOf: matrixRowKey,
}

const foldUnit = (unit: string) =>
  unit
    .toLowerCase()
    .replaceAll('µ', 'u')
    .replaceAll('μ', 'u')
    .replace(/^pct$/, '%')
    // The small letter of Ω, of which there are two signs.
    .replace(/^ohms?$|^ω$/, 'ω')

function readLimit(
  parameter: TradeParameter,
  text: string,
  /** Unit of length that the row states, of a number that carries none. */
  stated: LengthUnit | undefined,
): { readonly limit: number | string[] | null } | { readonly problem: string } {
  const trimmed = text.trim()
  if (trimmed === '') return { limit: null }
  if (parameter.direction !== 'one-of') {
    const own = unitOf(parameter) ?? ''
    const value = isKeptLength(parameter.unit) ? readLength(trimmed, parameter.unit, stated) : readNumber(trimmed, own)
    return value === null ? { problem: `"${trimmed}" is not a number in ${own}` } : { limit: value }
  }
  const choices = trimmed
    .split(CHOICE_SEPARATOR)
    .map((part) => part.trim())
    .filter((part) => part !== '')
  return { limit: choices.map((choice) => findChoice(parameter, choice) ?? choice) }
}
