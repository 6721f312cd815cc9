import { DESIGN_FIELDS, getFieldInText } from './design-fields'
import type { FieldNode } from './field'

/** A field of the design by its place, `*` for the entries of a list: `bends.*.insideRadiusMm`. */
export interface FieldPattern {
  readonly pattern: string
  /** As a picker shows it, from the outermost part to the field: `Bends: inside radius`. */
  readonly label: string
  readonly node: FieldNode
}

/** What is not for people to fill in: it names an entry, or says what the document is. */
const NOT_ASKED: readonly string[] = ['id', 'name', 'format', 'formatVersion', 'assumed', 'none']

const GROUPS: readonly string[] = ['construction', 'features']

/** Every field at the end of a path, in the order of the dictionary. */
export function listFieldPatterns(): readonly FieldPattern[] {
  patterns ??= walk(DESIGN_FIELDS, '', '')
  return patterns
}

let patterns: readonly FieldPattern[] | null = null

export function findFieldPattern(pattern: string): FieldPattern | null {
  byPattern ??= new Map(listFieldPatterns().map((field) => [field.pattern, field]))
  return byPattern.get(pattern) ?? null
}

let byPattern: ReadonlyMap<string, FieldPattern> | null = null

/** A group without words of its own adds none. */
function joinWords(label: string, node: FieldNode): string {
  if (label === '') return node.label
  const words = getFieldInText(node)
  return words === '' ? label : `${label}: ${words}`
}

function walk(fields: Readonly<Record<string, FieldNode>>, path: string, label: string): FieldPattern[] {
  return Object.entries(fields).flatMap(([key, node]): FieldPattern[] => {
    if (NOT_ASKED.includes(key)) return []
    const pattern = `${path}${key}`
    // "Bends", not "Features: bends": what merely groups lists says nothing.
    const words = GROUPS.includes(pattern) ? '' : joinWords(label, node)
    if (node.entry !== undefined) return walk(node.entry, `${pattern}.*.`, words)
    if (node.fields !== undefined) return walk(node.fields, `${pattern}.`, words)
    return [{ pattern, label: words, node }]
  })
}

/** A field whose choice says of which kind an entry is: `kind` of a zone, `use` of a bend. */
export interface KindField {
  readonly field: string
  readonly label: string
  readonly choices: Readonly<Record<string, string>>
}

/** The choices of the entries that a pattern leads to: what a rule may be narrowed to. Empty outside of lists. */
export function listKindFields(pattern: string): readonly KindField[] {
  const at = pattern.lastIndexOf('.*.')
  if (at < 0) return []
  const start = `${pattern.slice(0, at)}.*.`
  return listFieldPatterns().flatMap(({ pattern: other, node }) =>
    other.startsWith(start) && node.choices !== undefined && !other.slice(start.length).includes('.')
      ? [{ field: other.slice(start.length), label: node.label, choices: node.choices }]
      : [],
  )
}

/** Numbers without a unit, which the dictionary does not tell from words. A test compares with the schema. */
const PLAIN_NUMBERS: readonly string[] = [
  'construction.layers.*.coverageFraction',
  'construction.zones.*.presence.*.coverageFraction',
  'features.pads.*.anchorCount',
]

/** Lists of numbers: no single value to compare. */
const NOT_SINGLE: readonly string[] = ['features.outline.verticesMm']

/** Can the field's value be held against a limit? */
export function isNumericField({ pattern, node }: FieldPattern): boolean {
  return !NOT_SINGLE.includes(pattern) && (node.unit !== undefined || PLAIN_NUMBERS.includes(pattern))
}
