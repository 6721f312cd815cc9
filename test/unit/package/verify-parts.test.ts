import { describe, expect, it } from 'vitest'
import type { PackageFile } from '@/lib/package'
import { hashBytes } from '@/lib/package/file-hash'
import { makeSignedPartFiles, PARTS_PATH, SIGNED_ARTWORK_PATH, SIGNED_DESIGN_PATH } from '@/lib/package/signed-parts'
import { checkSignedParts } from '@/lib/package/verify-parts'

/** SHA-256 (FIPS 180-4) over canonical JSON (RFC 8785); which parts are held against which is a choice of ours. */
const encode = (value: unknown) =>
  new TextEncoder().encode(typeof value === 'string' ? value : JSON.stringify(value, null, 2))
const DESIGN = { name: 'Skua', bends: [{ id: 'hinge', insideRadiusMm: 17 }] }
const ARTWORK = [{ fileName: 'top.gbr', sha256: 'a'.repeat(64) }]
const CONTENT_HASH = 'c'.repeat(64)

function makeFiles(): Map<string, PackageFile> {
  const parts = makeSignedPartFiles(JSON.stringify({ design: DESIGN, artwork: ARTWORK, answers: ['withheld'] }))
  const list = parts.find(({ path }) => path === PARTS_PATH)
  if (list === undefined) throw new Error('no list')
  const record = {
    action: 'revision-signed',
    details: { contentHash: CONTENT_HASH, partsRoot: hashBytes(list.bytes) },
  }
  const files: PackageFile[] = [
    ...parts,
    { path: 'design.json', bytes: encode(DESIGN) },
    { path: 'artwork/index.json', bytes: encode({ files: [{ path: 'artwork/001-top.gbr', ...ARTWORK[0] }] }) },
    { path: 'trail.json', bytes: encode({ records: [record] }) },
  ]
  return new Map(files.map((file) => [file.path, file]))
}

function findings(change: (files: Map<string, PackageFile>) => void, hashes: readonly string[] = [CONTENT_HASH]) {
  const files = makeFiles()
  change(files)
  return checkSignedParts(files, hashes).map(({ file }) => file)
}

const put = (path: string, value: unknown) => (files: Map<string, PackageFile>) => {
  files.set(path, { path, bytes: encode(value) })
}

describe('the parts of what was signed', () => {
  it('agree as they were packed, and where there is no list yet', () => {
    expect(findings(() => {})).toEqual([])
    expect(findings((files) => files.delete(PARTS_PATH))).toEqual([])
    // A signature from before roots were recorded.
    expect(findings(() => {}, ['d'.repeat(64)])).toEqual([])
  })

  it.each([
    ['another design beside the signed one', put('design.json', { ...DESIGN, name: 'Other' }), ['design.json']],
    ['a design that is not JSON', put('design.json', '{'), ['design.json']],
    [
      'another part in place of the signed design',
      put(SIGNED_DESIGN_PATH, { ...DESIGN, name: 'Other' }),
      [SIGNED_DESIGN_PATH, 'design.json'],
    ],
    [
      'other artwork beside the signed one',
      put('artwork/index.json', { files: [{ fileName: 'top.gbr', sha256: 'b'.repeat(64) }] }),
      ['artwork/index.json'],
    ],
    [
      'artwork that was added',
      put('artwork/index.json', { files: [...ARTWORK, { fileName: 'more.gbr', sha256: 'b'.repeat(64) }] }),
      ['artwork/index.json'],
    ],
    ['a list that is none', put(PARTS_PATH, 'not a list'), [PARTS_PATH]],
  ])('are refused with %s', (_, change, expected) => {
    expect(findings(change)).toEqual(expected)
  })

  it('are refused where a part is missing', () => {
    expect(findings((files) => files.delete(SIGNED_ARTWORK_PATH))).toEqual([SIGNED_ARTWORK_PATH, 'artwork/index.json'])
  })

  it('are refused where all of them were made again: the trail recorded another root with the signature', () => {
    const forged = { ...DESIGN, name: 'Forged' }
    const parts = makeSignedPartFiles(JSON.stringify({ design: forged, artwork: ARTWORK, answers: ['withheld'] }))
    const found = findings((files) => {
      for (const file of parts) files.set(file.path, file)
      put('design.json', forged)(files)
    })
    expect(found).toEqual([PARTS_PATH])
  })
})
