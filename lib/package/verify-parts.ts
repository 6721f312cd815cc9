import { z } from 'zod'
import { canonicalJson } from '@/lib/review'
import { parseChecksums } from './checksums'
import type { PackageFile } from './content'
import { hashBytes } from './file-hash'
import { PARTS_PATH, SIGNED_ARTWORK_PATH, SIGNED_DESIGN_PATH } from './signed-parts'

const artworkSchema = z.array(z.looseObject({ fileName: z.string(), sha256: z.string() }))
const indexSchema = z.looseObject({ files: z.array(z.looseObject({ fileName: z.string(), sha256: z.string() })) })
const signedRecordSchema = z.looseObject({
  action: z.literal('revision-signed'),
  details: z.looseObject({ contentHash: z.string(), partsRoot: z.string() }),
})
const trailSchema = z.looseObject({ records: z.array(z.unknown()) })

export interface PartsFinding {
  readonly file: string
  readonly message: string
}

/**
 * Holds the package's design and artwork against what was signed, in every edition: parts against their list, the list
 * against the root that the trail recorded with the signature. Packages without such a list are from before it.
 *
 * @param contentHashes  what the signatures that stand are on
 */
export function checkSignedParts(
  files: ReadonlyMap<string, PackageFile>,
  contentHashes: readonly string[],
): PartsFinding[] {
  const list = files.get(PARTS_PATH)
  if (list === undefined) return []
  const findings: PartsFinding[] = []
  const add = (file: string, message: string) => findings.push({ file, message })
  const sums = parseChecksums(readText(list))
  if (sums === null) return [{ file: PARTS_PATH, message: 'is not a list of checksums' }]
  for (const path of [SIGNED_DESIGN_PATH, SIGNED_ARTWORK_PATH]) {
    const name = path.split('/').at(-1) ?? ''
    const file = files.get(path)
    if (file === undefined) add(path, `${path} is missing`)
    else if (hashBytes(file.bytes) !== sums.get(name)) add(path, `${path} is not the part that was signed`)
  }
  if (!isSameJson(files.get('design.json'), files.get(SIGNED_DESIGN_PATH))) {
    add('design.json', 'design.json is not the design that was signed')
  }
  if (!isSameArtwork(files.get('artwork/index.json'), files.get(SIGNED_ARTWORK_PATH))) {
    add('artwork/index.json', 'the artwork is not the artwork that was signed')
  }
  const root = hashBytes(list.bytes)
  const roots = listRoots(files.get('trail.json'))
  for (const contentHash of contentHashes) {
    const recorded = roots.get(contentHash)
    // A signature from before roots were recorded has none to be held against.
    if (recorded !== undefined && recorded !== root) {
      add(PARTS_PATH, 'the list of signed parts is not the one that the trail recorded with the signature')
    }
  }
  return findings
}

function listRoots(trail: PackageFile | undefined): ReadonlyMap<string, string> {
  const roots = new Map<string, string>()
  const parsed = trailSchema.safeParse(parseJson(trail))
  if (!parsed.success) return roots
  for (const record of parsed.data.records) {
    const signed = signedRecordSchema.safeParse(record)
    if (signed.success) roots.set(signed.data.details.contentHash, signed.data.details.partsRoot)
  }
  return roots
}

function isSameArtwork(index: PackageFile | undefined, signed: PackageFile | undefined): boolean {
  const packed = indexSchema.safeParse(parseJson(index))
  const wanted = artworkSchema.safeParse(parseJson(signed))
  if (!packed.success || !wanted.success) return false
  const name = ({ fileName, sha256 }: { fileName: string; sha256: string }) => `${fileName} ${sha256}`
  return packed.data.files.map(name).sort().join('\n') === wanted.data.map(name).sort().join('\n')
}

function isSameJson(a: PackageFile | undefined, b: PackageFile | undefined): boolean {
  try {
    return canonicalJson(z.json().parse(parseJson(a))) === canonicalJson(z.json().parse(parseJson(b)))
  } catch {
    return false
  }
}

function parseJson(file: PackageFile | undefined): unknown {
  try {
    return file === undefined ? undefined : JSON.parse(readText(file))
  } catch {
    return undefined
  }
}

const readText = (file: PackageFile) => new TextDecoder().decode(file.bytes)
