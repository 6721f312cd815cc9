import type { Design } from './design'
import { BEND_FIELDS, FEATURE_FIELDS, type FieldNode, getFieldInText, LAYER_FIELDS, ZONE_FIELDS } from './fields'

/** Lists whose entries may hold values that nobody has confirmed, with the entries' fields and those that may be marked. */
export const ASSUMABLE_FIELDS = {
  layers: {
    words: LAYER_FIELDS,
    fields: [
      'thicknessUm',
      'tolerancePlusUm',
      'toleranceMinusUm',
      'materialId',
      'coverageFraction',
      'plating',
      'processingLossUm',
    ],
  },
  zones: { words: ZONE_FIELDS, fields: ['kind', 'lengthMm', 'widthMm', 'presence'] },
  bends: {
    words: BEND_FIELDS,
    fields: [
      'zoneId',
      'insideRadiusMm',
      'radiusToleranceMm',
      'angleDeg',
      'insideFace',
      'axisLengthMm',
      'use',
      'motion',
    ],
  },
  conductors: {
    words: FEATURE_FIELDS.conductors.entry,
    fields: ['layerId', 'widthMm', 'spaceMm', 'lengthMm', 'crossings'],
  },
  pads: { words: FEATURE_FIELDS.pads.entry, fields: ['layerId'] },
  widthSteps: { words: FEATURE_FIELDS.widthSteps.entry, fields: ['layerId'] },
} as const satisfies Record<
  string,
  { readonly words: Readonly<Record<string, FieldNode>>; readonly fields: readonly string[] }
>

export type AssumableList = keyof typeof ASSUMABLE_FIELDS

export interface Assumption {
  readonly mark: string
  readonly list: AssumableList
  /** Place of the entry in its list. */
  readonly index: number
  readonly id: string
  readonly name: string
  readonly field: string
  /** The field in words. */
  readonly label: string
}

export function markAssumed<L extends AssumableList>(
  list: L,
  id: string,
  fields: readonly (typeof ASSUMABLE_FIELDS)[L]['fields'][number][],
): string[] {
  return fields.map((field) => `${list}.${id}.${field}`)
}

/** What the design holds unconfirmed, in the order of the marks. Marks of entries that are gone say nothing. */
export function listAssumptions(design: Design): Assumption[] {
  return design.assumed.flatMap((mark): Assumption[] => {
    const [list, id, field] = mark.split('.') as [AssumableList, string, string]
    const words: Readonly<Record<string, FieldNode>> = ASSUMABLE_FIELDS[list].words
    const isAssumable = (ASSUMABLE_FIELDS[list].fields as readonly string[]).includes(field)
    const index = listEntries(design, list).findIndex((entry) => entry.id === id)
    const entry = listEntries(design, list)[index]
    const label = isAssumable && words[field] !== undefined ? getFieldInText(words[field]) : undefined
    return entry === undefined || label === undefined ? [] : [{ mark, list, index, id, name: entry.name, field, label }]
  })
}

/** Without these marks: somebody has confirmed the values. */
export function confirmAssumed(design: Design, marks: readonly string[]): Design {
  return { ...design, assumed: design.assumed.filter((mark) => !marks.includes(mark)) }
}

/** Anyone who changes a value has said what it is: its mark goes, as do those of entries that are gone. */
export function dropSettledMarks(before: Design, after: Design): Design {
  if (after.assumed.length === 0) return after
  const assumed = after.assumed.filter((mark) => {
    const value = readMarked(after, mark)
    // A mark that came with this very change is not settled by it.
    if (!before.assumed.includes(mark)) return value !== undefined
    return value !== undefined && JSON.stringify(value) === JSON.stringify(readMarked(before, mark))
  })
  return assumed.length === after.assumed.length ? after : { ...after, assumed }
}

function readMarked(design: Design, mark: string): unknown {
  const [list, id, field] = mark.split('.') as [AssumableList, string, string]
  const entry = listEntries(design, list).find((candidate) => candidate.id === id)
  return entry === undefined ? undefined : (entry as unknown as Readonly<Record<string, unknown>>)[field]
}

function listEntries(design: Design, list: AssumableList): readonly { readonly id: string; readonly name: string }[] {
  switch (list) {
    case 'layers':
      return design.construction.layers
    case 'zones':
      return design.construction.zones
    case 'bends':
      return design.bends
    case 'conductors':
    case 'pads':
    case 'widthSteps':
      return design.features[list]
  }
}
