import type { Design } from '../design'
import { BEND_FIELDS } from './bend-fields'
import { BRIEF_FIELDS } from './brief-fields'
import { LAYER_FIELDS, ZONE_FIELDS } from './construction-fields'
import { FEATURE_FIELDS } from './feature-fields'
import type { FieldNode } from './field'
import { MATERIAL_FIELDS } from './material-fields'
import { PLAN_FIELDS } from './plan-fields'

/** The whole dictionary, in the shape of the design. */
export const DESIGN_FIELDS = {
  format: { label: 'Format' },
  formatVersion: { label: 'Version of the format' },
  name: { label: 'Design name', inText: 'name' },
  brief: { label: 'Brief', fields: BRIEF_FIELDS },
  materials: { label: 'Materials', entry: MATERIAL_FIELDS },
  construction: {
    label: 'Construction',
    fields: {
      layers: { label: 'Layers', entry: LAYER_FIELDS },
      zones: { label: 'Zones', entry: ZONE_FIELDS },
    },
  },
  bends: { label: 'Bends', entry: BEND_FIELDS },
  features: { label: 'Features', fields: FEATURE_FIELDS },
  plan: { label: 'Plan', fields: PLAN_FIELDS },
  assumed: { label: 'Assumed values' },
} as const satisfies Record<keyof Design, FieldNode>

/** Below a sourced number: the number itself is the field, and what else belongs to it has words of its own. */
function findSourcedPart(node: FieldNode, key: string): FieldNode | undefined {
  const ofValue = node.unit === undefined ? {} : { unit: node.unit }
  switch (key) {
    case 'value':
      return { label: '', ...ofValue }
    case 'spread':
      return { label: 'Spread', ...ofValue }
    case 'low':
    case 'high':
      return { label: key, ...ofValue }
    case 'sourceKey':
      return { label: 'Source' }
    default:
      return undefined
  }
}

/**
 * The entries that a path passes, one for each step; null for a step that stands for an entry of a list (an index, or an id),
 * and for whatever the dictionary does not know.
 *
 * @param path  `['bends', 'hinge', 'flexTest', 'travelMm']`, `['construction', 'layers', '3', 'thicknessUm']`
 */
function walkFields(path: readonly (string | number)[]): (FieldNode | null)[] {
  let node: FieldNode | null = { label: '', fields: DESIGN_FIELDS }
  let isEntry = false
  return path.map((step) => {
    if (isEntry) {
      node = { label: '', fields: node?.entry ?? {} }
      isEntry = false
      return null
    }
    const key = String(step)
    const found: FieldNode | undefined = node === null ? undefined : (node.fields?.[key] ?? findSourcedPart(node, key))
    node = found ?? null
    isEntry = found?.entry !== undefined
    return node
  })
}

export interface FieldInText {
  /** `inside radius`; fields within fields are named by all their steps: `plating tolerance`. */
  readonly label: string
  /** Null where the dictionary does not know the place. */
  readonly node: FieldNode | null
}

/**
 * A field in words, by its place in the design.
 *
 * @param count  how many steps at the end of the path the words are to name; the rest is named by the caller
 */
export function findFieldWords(path: readonly (string | number)[], count = 1): FieldInText {
  const nodes = walkFields(path)
  const label = nodes
    .slice(path.length - count)
    .map((node) => (node === null ? '' : getFieldInText(node)))
    .filter((words) => words !== '')
    .join(' ')
  return { label, node: nodes.at(-1) ?? null }
}

/** A field within a sentence: `inside radius`. */
export function getFieldInText({ label, inText }: FieldNode): string {
  return inText ?? label.charAt(0).toLowerCase() + label.slice(1)
}

/** A value of a list in its words; the value itself where a later version of the program wrote one that is not known here. */
export function getChoiceWord(field: FieldNode, value: string | null): string {
  if (value === null) return NOT_STATED
  return field.choices !== undefined && Object.hasOwn(field.choices, value) ? (field.choices[value] ?? value) : value
}

/** Stands where a design says nothing. */
export const NOT_STATED = 'not stated'

/** Values of a list with their words, in the order of the dictionary, as pickers show them. */
export function listChoices<V extends string>(field: {
  readonly choices: Readonly<Record<V, string>>
}): readonly { readonly value: V; readonly label: string }[] {
  return (Object.entries(field.choices) as [V, string][]).map(([value, label]) => ({ value, label }))
}
