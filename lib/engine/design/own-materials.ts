import { listLibraryMaterials } from '../materials'
import type { Issue } from '../results'
import { citeSource, SOURCES, type SourceKey } from '../sources'
import { type Material, materialSchema, type SourcedNumber } from './material'
import { isPlaceholder } from './open-text'

/** A material that somebody describes: the library that keeps it gives it the id that designs use. */
export const newMaterialSchema = materialSchema.omit({ id: true })
export type NewMaterial = Omit<Material, 'id'>

/** One constant of a material and where it stands in the record. */
export interface MaterialConstant {
  /** `['modulusGpa']`, `['foil', 'yieldStrengthMpa']` */
  readonly path: readonly string[]
  readonly number: SourcedNumber
}

/** The constants that the material states, in the order of the record. */
export function listMaterialConstants({ foil, ...material }: NewMaterial): MaterialConstant[] {
  const stated = (record: object, at: readonly string[]) =>
    Object.entries(record).flatMap(([key, value]): MaterialConstant[] =>
      isSourced(value) ? [{ path: [...at, key], number: value }] : [],
    )
  return [...stated(material, []), ...(foil === null ? [] : stated(foil, ['foil']))]
}

function isSourced(value: unknown): value is SourcedNumber {
  return typeof value === 'object' && value !== null && 'sourceKey' in value
}

const CITATIONS: ReadonlyMap<string, SourceKey> = new Map(
  (Object.keys(SOURCES) as SourceKey[]).map((key) => [citeSource(key), key]),
)

/** The key of a source of this program, given by its key or as it is cited; null for a source in somebody's own words. */
function findOwnKey(source: string): SourceKey | null {
  return Object.hasOwn(SOURCES, source) ? (source as SourceKey) : (CITATIONS.get(source) ?? null)
}

/**
 * What no schema sees of a material of one's own: foil data where they belong, and sources that say what they are said to say. A source of
 * this program may stand beside a figure only where its library gives that very figure from it: a changed figure is somebody else's.
 */
export function findOwnMaterialIssues(material: NewMaterial): Issue[] {
  const issues: Issue[] = []
  const add = (code: string, path: readonly (string | number)[], message: string) =>
    issues.push({ code, path: [...path], message })
  if ((material.kind === 'copper-foil') !== (material.foil !== null)) {
    add('foil-data', ['foil'], 'copper foils need foil data, and only copper foils have them')
  }
  if (material.foil?.type === 'plated') {
    add('foil-data', ['foil', 'type'], 'is what a plating bath adds; a layer is made of foil')
  }
  for (const { path, number } of listMaterialConstants(material)) {
    const known = listLibraryMaterials().flatMap((library) =>
      listMaterialConstants(library)
        .filter((candidate) => candidate.path.join('.') === path.join('.'))
        .map((candidate) => candidate.number),
    )
    checkSource(number.sourceKey, [...path, 'sourceKey'], (key) =>
      known.some(({ sourceKey, value }) => sourceKey === key && value === number.value),
    )
    const { spread } = number
    if (spread === null) continue
    checkSource(spread.sourceKey, [...path, 'spread', 'sourceKey'], (key) =>
      known.some(
        (each) => each.spread?.sourceKey === key && each.spread.low === spread.low && each.spread.high === spread.high,
      ),
    )
  }
  return issues

  function checkSource(source: string, path: readonly string[], isGivenBy: (key: SourceKey) => boolean): void {
    const key = findOwnKey(source.trim())
    if (key === null) {
      if (isPlaceholder(source)) add('no-source', path, 'say where the figure comes from: a data sheet, a test report')
    } else if (!isGivenBy(key)) {
      add(
        'source-says-otherwise',
        path,
        `the library does not have this figure from "${citeSource(key)}"; say where it comes from`,
      )
    }
  }
}

/** An id of a version of a material that a workspace keeps: a later version is another material of a design. */
export function makeOwnMaterialId(entryId: string, version: number): string {
  return `${entryId}-v${version}`
}

const VERSION_OF_ENTRY = /^(own-[a-z0-9-]+)-v([1-9]\d*)$/

/** The entry and version that a design's own material is a copy of; null for one that came with a file. */
export function readOwnMaterialId(id: string): { readonly entryId: string; readonly version: number } | null {
  const found = VERSION_OF_ENTRY.exec(id)
  return found?.[1] === undefined ? null : { entryId: found[1], version: Number(found[2]) }
}
