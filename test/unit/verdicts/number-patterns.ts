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
}

/** Kinds of schema that hold no number. One that is not listed here throws, so that no number is passed over. */
const WITHOUT_NUMBERS = ['string', 'enum', 'boolean', 'literal', 'null']

/** Every place of the design document at which its schema takes a number, `*` for entries of a list: `bends.*.insideRadiusMm`. A constant of a material is one place. */
export function listNumberPatterns(): readonly string[] {
  const found = new Set<string>()
  walk(designSchema, '', found)
  return [...found]
}

function walk(schema: unknown, path: string, found: Set<string>): void {
  const { def } = (schema as { readonly _zod: { readonly def: Definition } })._zod
  switch (def.type) {
    case 'object': {
      const shape = def.shape ?? {}
      if ('value' in shape && 'sourceKey' in shape) walk(shape.value, path, found)
      else for (const [key, inner] of Object.entries(shape)) walk(inner, path === '' ? key : `${path}.${key}`, found)
      return
    }
    case 'array':
      walk(def.element, isPoint(def.element) ? path : `${path}.*`, found)
      return
    case 'tuple':
      for (const item of def.items ?? []) walk(item, path, found)
      return
    case 'nullable':
    case 'optional':
    case 'default':
    case 'readonly':
      walk(def.innerType, path, found)
      return
    case 'union':
      for (const option of def.options ?? []) walk(option, path, found)
      return
    case 'pipe':
      walk(def.in, path, found)
      walk(def.out, path, found)
      return
    case 'number':
      found.add(path)
      return
    default:
      if (!WITHOUT_NUMBERS.includes(def.type))
        throw new RangeError(`${path}: nothing is known of a schema of type ${def.type}`)
  }
}

/** A list of points has one place. */
const isPoint = (schema: unknown): boolean =>
  (schema as { readonly _zod?: { readonly def: Definition } })._zod?.def.type === 'tuple'
