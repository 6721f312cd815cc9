import { citeRecordedSource } from '@/lib/engine'
import {
  type FieldNode,
  FOIL_TYPES,
  type FoilType,
  findOwnMaterialIssues,
  MATERIAL_FIELDS,
  type MaterialKind,
  type NewMaterial,
  newMaterialSchema,
  type SourcedNumber,
} from '@/lib/engine/design'
import { getUnitSymbol, parseNumber } from '@/lib/engine/units'

/** One constant as it is being typed. */
export interface ConstantTexts {
  readonly value: string
  readonly low: string
  readonly high: string
  readonly source: string
  /** Empty where it is the source of the value. */
  readonly rangeSource: string
}

/** A material as it is being typed; constants by their path (`modulusGpa`, `foil.yieldStrengthMpa`). */
export interface MaterialDraft {
  readonly name: string
  readonly kind: MaterialKind
  readonly specification: string
  readonly note: string
  readonly foilType: FoilType
  readonly constants: Readonly<Record<string, ConstantTexts>>
  /** What it began with: a source of the library stays beside the figure that it gives. */
  readonly base: NewMaterial | null
}

export interface ConstantField {
  readonly key: string
  readonly label: string
  readonly unit: string | undefined
  readonly isRequired: boolean
}

/** Which a material cannot be without; the schema refuses the rest of what is wrong. */
const REQUIRED: ReadonlySet<string> = new Set([
  'modulusGpa',
  'poisson',
  'foil.yieldStrengthMpa',
  'foil.tensileStrengthMpa',
  'foil.fatigueDuctility',
  'foil.resistivityOhmMm2PerM',
])
const NO_CONSTANTS: ReadonlySet<string> = new Set(['id', 'name', 'kind', 'specification', 'foil', 'note', 'type'])

const listFields = (fields: Readonly<Record<string, FieldNode>>, prefix: string): ConstantField[] =>
  Object.entries(fields).flatMap(([name, { label, unit }]) => {
    const key = `${prefix}${name}`
    if (NO_CONSTANTS.has(name)) return []
    return [{ key, label, unit: unit === undefined ? undefined : getUnitSymbol(unit), isRequired: REQUIRED.has(key) }]
  })

const OF_EVERY_KIND = listFields(MATERIAL_FIELDS, '')
const OF_FOILS = listFields(MATERIAL_FIELDS.foil.fields, 'foil.')

/** The constants that a material of the kind has, in the order of the dictionary of fields. */
export const listConstantFields = (kind: MaterialKind): readonly ConstantField[] =>
  kind === 'copper-foil' ? [...OF_EVERY_KIND, ...OF_FOILS] : OF_EVERY_KIND

/** What a layer's foil may be: copper that a bath adds is no material of a layer. */
export const OWN_FOIL_TYPES = FOIL_TYPES.filter((type) => type !== 'plated')

export const NO_TEXTS: ConstantTexts = { value: '', low: '', high: '', source: '', rangeSource: '' }

export const EMPTY_DRAFT: MaterialDraft = {
  name: '',
  kind: 'polymer-film',
  specification: '',
  note: '',
  foilType: 'rolled-annealed',
  constants: {},
  base: null,
}

/** A material's own record as it is edited. */
export function draftOf(material: NewMaterial): MaterialDraft {
  const { name, kind, specification, note, foil } = material
  const constants = Object.fromEntries(
    listConstantFields(kind).map(({ key }) => [key, writeConstant(readConstant(material, key))]),
  )
  return { name, kind, specification, note, foilType: foil?.type ?? 'rolled-annealed', constants, base: material }
}

/** A new material that begins with the figures of one of the library: its name and note are to be given. */
export const draftFrom = (material: NewMaterial): MaterialDraft => ({ ...draftOf(material), name: '', note: '' })

function readConstant(material: NewMaterial, key: string): SourcedNumber | null {
  const record: object | null = key.startsWith('foil.') ? material.foil : material
  const value: unknown = record === null ? null : Reflect.get(record, key.replace('foil.', ''))
  return (value ?? null) as SourcedNumber | null
}

function writeConstant(number: SourcedNumber | null): ConstantTexts {
  if (number === null) return NO_TEXTS
  const { value, sourceKey, spread } = number
  return {
    value: String(value),
    low: spread === null ? '' : String(spread.low),
    high: spread === null ? '' : String(spread.high),
    source: citeRecordedSource(sourceKey),
    rangeSource: spread === null || spread.sourceKey === sourceKey ? '' : citeRecordedSource(spread.sourceKey),
  }
}

/** A source goes with the figures that it gave: who changes one has to say where the new one comes from. */
export function withTexts(draft: MaterialDraft, key: string, change: Partial<ConstantTexts>): MaterialDraft {
  const before = draft.constants[key] ?? NO_TEXTS
  const base = draft.base === null ? NO_TEXTS : writeConstant(readConstant(draft.base, key))
  const after = { ...before, ...change }
  const isOfBase = (field: 'source' | 'rangeSource') => before[field] !== '' && before[field] === base[field]
  const movesValue = after.value !== base.value && isOfBase('source') && change.source === undefined
  const movesRange =
    (after.low !== base.low || after.high !== base.high) && isOfBase('rangeSource') && change.rangeSource === undefined
  return {
    ...draft,
    constants: {
      ...draft.constants,
      [key]: { ...after, ...(movesValue ? { source: '' } : {}), ...(movesRange ? { rangeSource: '' } : {}) },
    },
  }
}

export type DraftReading =
  | { readonly ok: true; readonly material: NewMaterial }
  /** What is wrong, by field: `name`, `modulusGpa`, `foil.yieldStrengthMpa`. */
  | { readonly ok: false; readonly problems: ReadonlyMap<string, string> }

export function readDraft(draft: MaterialDraft): DraftReading {
  const problems = new Map<string, string>()
  const numbers = new Map(
    listConstantFields(draft.kind).map((field) => [field.key, readTexts(draft, field, problems)] as const),
  )
  const pick = (prefix: string) =>
    Object.fromEntries(
      [...numbers]
        .filter(([key]) => key.includes('.') === (prefix !== ''))
        .map(([key, number]) => [key.replace(prefix, ''), number]),
    )
  const parsed = newMaterialSchema.safeParse({
    name: draft.name,
    kind: draft.kind,
    specification: draft.specification,
    note: draft.note,
    ...pick(''),
    foil: draft.kind === 'copper-foil' ? { type: draft.foilType, ...pick('foil.') } : null,
  })
  const issues = parsed.success ? findOwnMaterialIssues(parsed.data) : parsed.error.issues
  for (const { path, message } of issues) {
    const [first, second] = path.map(String)
    const key = first === 'foil' && second !== undefined ? `foil.${second}` : (first ?? '')
    if (!problems.has(key)) problems.set(key, message)
  }
  return parsed.success && problems.size === 0 ? { ok: true, material: parsed.data } : { ok: false, problems }
}

function readTexts(
  draft: MaterialDraft,
  { key, isRequired }: ConstantField,
  problems: Map<string, string>,
): SourcedNumber | null {
  const texts = draft.constants[key] ?? NO_TEXTS
  const isEmpty = Object.values(texts).every((text) => text.trim() === '')
  if (isEmpty) {
    if (isRequired) problems.set(key, 'is needed')
    return null
  }
  const base = draft.base === null ? null : readConstant(draft.base, key)
  const refuse = (message: string) => {
    problems.set(key, message)
    return null
  }
  if (texts.value.trim() === '') return refuse('state the value')
  const value = parseNumber(texts.value)
  const low = texts.low.trim() === '' ? null : parseNumber(texts.low)
  const high = texts.high.trim() === '' ? null : parseNumber(texts.high)
  if (!value.ok) return refuse(value.message)
  if (low?.ok === false) return refuse(low.message)
  if (high?.ok === false) return refuse(high.message)
  if ((low === null) !== (high === null)) return refuse('state both ends of the range, or neither')
  if (texts.source.trim() === '') return refuse('say where the value comes from: a data sheet, a test report')
  const sourceKey = keyOf(texts.source, base?.sourceKey)
  const rangeSource = texts.rangeSource.trim() === '' ? sourceKey : keyOf(texts.rangeSource, base?.spread?.sourceKey)
  return {
    value: value.value,
    sourceKey,
    spread: low === null || high === null ? null : { low: low.value, high: high.value, sourceKey: rangeSource },
  }
}

/** The key that a citation of the base stands for; otherwise the words as they are. */
const keyOf = (text: string, baseKey: string | undefined) =>
  baseKey !== undefined && text.trim() === citeRecordedSource(baseKey) ? baseKey : text.trim()
