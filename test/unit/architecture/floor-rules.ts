import type { SourceFile } from './source-imports'

/** Floors of lib/data, each with those that it may import from. The clients that Prisma generates are part of the store. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  views: [],
  generated: [],
  store: ['generated', 'views'],
  records: ['store', 'generated', 'views'],
  consequences: ['records', 'store', 'generated', 'views'],
  reads: ['consequences', 'records', 'store', 'generated', 'views'],
  acts: ['reads', 'consequences', 'records', 'store', 'generated', 'views'],
}

/** The one door of the data layer; it may import every floor, and no floor may import it. */
const DOOR = 'lib/data/index.ts'

/** Sentences about a file of lib/data that stands on no floor, or imports from a floor above its own. */
export function checkFloors({ file, imports }: SourceFile): string[] {
  if (file === DOOR) return []
  const floor = /^lib\/data\/([^/]+)\//.exec(file)?.[1] ?? ''
  const allowed = MAY_IMPORT[floor]
  if (allowed === undefined) return [`${file} stands on no floor of lib/data: ${Object.keys(MAY_IMPORT).join(', ')}`]
  return imports.flatMap(({ specifier, target }) => {
    if (target === null || !/^lib\/data(\/|$)/.test(target)) return []
    const other = /^lib\/data\/([^/]+)/.exec(target)?.[1] ?? ''
    if (other === floor || allowed.includes(other)) return []
    return [`${file} imports ${specifier}: ${floor} may not import ${other === '' ? 'the door' : other}`]
  })
}
