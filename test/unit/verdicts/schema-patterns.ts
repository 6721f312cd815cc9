import { designSchema } from '@/lib/engine/design/design'

interface Definition {
  readonly type: string
  readonly shape?: Readonly<Record<string, unknown>>
  readonly element?: unknown
  readonly innerType?: unknown
  readonly options?: readonly unknown[]
  readonly items?: readonly unknown[]
  readonly in?: unknown
  readonly out?: unknown
  readonly entries?: Readonly<Record<string, string>>
}

/** Kinds of schema at which a walk ends. One that is not listed here throws, so that no field is passed over. */
const LEAVES = ['string', 'enum', 'boolean', 'literal', 'null', 'number']

type See = (path: string, definition: Definition) => void

/** Every place of the design document at which its schema takes a number, `*` for entries of a list: `bends.*.insideRadiusMm`. A constant of a material is one place. */
export function listNumberPatterns(): readonly string[] {
  const found = new Set<string>()
  walk(designSchema, '', (path, { type }) => {
    if (type === 'number') found.add(path)
  })
  return [...found]
}

/** Every place at which it takes one of several words, or yes or no, with all that it takes there. */
export function listChoicePatterns(): ReadonlyMap<string, ReadonlySet<string | boolean>> {
  const found = new Map<string, Set<string | boolean>>()
  walk(designSchema, '', (path, { type, entries }) => {
    const choices = type === 'boolean' ? [true, false] : type === 'enum' ? Object.values(entries ?? {}) : []
    if (choices.length > 0) found.set(path, new Set([...(found.get(path) ?? []), ...choices]))
  })
  return found
}

function walk(schema: unknown, path: string, see: See): void {
  const { def } = (schema as { readonly _zod: { readonly def: Definition } })._zod
  switch (def.type) {
    case 'object': {
      const shape = def.shape ?? {}
      if ('value' in shape && 'sourceKey' in shape) walk(shape.value, path, see)
      else for (const [key, inner] of Object.entries(shape)) walk(inner, path === '' ? key : `${path}.${key}`, see)
      return
    }
    case 'array':
      walk(def.element, isPoint(def.element) ? path : `${path}.*`, see)
      return
    case 'tuple':
      for (const item of def.items ?? []) walk(item, path, see)
      return
    case 'nullable':
    case 'optional':
    case 'default':
    case 'readonly':
      walk(def.innerType, path, see)
      return
    case 'union':
      for (const option of def.options ?? []) walk(option, path, see)
      return
    case 'pipe':
      walk(def.in, path, see)
      walk(def.out, path, see)
      return
    default:
      if (!LEAVES.includes(def.type)) throw new RangeError(`${path}: nothing is known of a schema of type ${def.type}`)
      see(path, def)
  }
}

/** A list of points has one place. */
const isPoint = (schema: unknown): boolean =>
  (schema as { readonly _zod?: { readonly def: Definition } })._zod?.def.type === 'tuple'
