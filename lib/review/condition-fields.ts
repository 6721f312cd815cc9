import type { Design } from '@/lib/engine'
import { describePlace } from './design-place'

/** A field of the design that a condition can name: its path as comparisons write it, with ids for entries of lists. */
export interface ConditionField {
  readonly path: string
  readonly label: string
}

const BEND_KEYS = ['insideRadiusMm', 'angleDeg', 'distanceToRigidMm', 'requiredCycles'] as const
const LAYER_KEYS = ['thicknessUm', 'materialId'] as const
const ZONE_KEYS = ['lengthMm', 'widthMm'] as const

/** What fabricators make conditions about, by name; anything else is free text. */
export function listConditionFields(design: Design): ConditionField[] {
  const { layers, zones } = design.construction
  const list = (
    entries: readonly { readonly id: string }[],
    keys: readonly string[],
    tokens: readonly string[],
  ): ConditionField[] =>
    entries.flatMap((entry, at) =>
      keys
        .filter((key) => key in entry)
        .map((key) => ({
          path: [...tokens, entry.id, key].join('.'),
          label: describePlace(design, [...tokens, String(at), key]).label,
        })),
    )
  return [
    ...list(design.bends, BEND_KEYS, ['bends']),
    ...list(layers, LAYER_KEYS, ['construction', 'layers']),
    ...list(zones, ZONE_KEYS, ['construction', 'zones']),
  ]
}

/** What the design says in a field that a condition names; undefined where there is no such field any more. */
export function readConditionField(design: Design, path: string): unknown {
  let node: unknown = design
  for (const token of path.split('.')) {
    if (Array.isArray(node)) node = node.find((entry) => readKey(entry, 'id') === token)
    else node = readKey(node, token)
  }
  return node
}

function readKey(node: unknown, key: string): unknown {
  return typeof node === 'object' && node !== null ? (node as Readonly<Record<string, unknown>>)[key] : undefined
}
