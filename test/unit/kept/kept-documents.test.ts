import { describe, expect, test } from 'vitest'
import { getProposedDesign } from '@/lib/data/records/proposal-patch'
import {
  DESIGN_FORMAT_VERSION,
  evaluate,
  parseDesignText,
  readStoredDesign,
  readStoredResults,
  StoredDocumentError,
} from '@/lib/engine'
import { verifyPackage } from '@/lib/package'
import {
  canonicalJson,
  hashDesign,
  readSignedContent,
  readSignedDesign,
  readStoredPatch,
  sha256Hex,
} from '@/lib/review'
import {
  KEPT_FORMATS,
  KEPT_REVISIONS,
  readKeptPackage,
  readKeptProposal,
  readKeptRevision,
} from '@/test/factories/kept-documents'

/** Every leaf by its path. */
function listLeaves(node: unknown, path = ''): [string, unknown][] {
  if (typeof node !== 'object' || node === null) return [[path, node]]
  const entries = Object.entries(node)
  return entries.length === 0 ? [[path, node]] : entries.flatMap(([key, inner]) => listLeaves(inner, `${path}/${key}`))
}

const isObject = (node: unknown): node is Record<string, unknown> =>
  typeof node === 'object' && node !== null && !Array.isArray(node)

/** Fields that today's results have and earlier ones lack, where both have an object. */
function listLacking(earlier: unknown, today: unknown, path = ''): string[] {
  if (Array.isArray(earlier) && Array.isArray(today)) {
    return earlier.flatMap((entry: unknown, index) => listLacking(entry, today[index], `${path}/${index}`))
  }
  if (!isObject(earlier) || !isObject(today)) return []
  return Object.keys(today).flatMap((key) =>
    key in earlier ? listLacking(earlier[key], today[key], `${path}/${key}`) : [`${path}/${key}`],
  )
}

const EACH = KEPT_FORMATS.flatMap((format) => KEPT_REVISIONS.map((name) => [format, name] as const))

test('documents of each format before the present one are kept; those of the present one once the program has stored them', () => {
  const formats = Array.from({ length: DESIGN_FORMAT_VERSION }, (_, index) => index + 1)
  expect([formats, formats.slice(0, -1)]).toContainEqual(KEPT_FORMATS)
})

describe.each(EACH)('format %i, %s', (format, name) => {
  const kept = readKeptRevision(format, name)

  test('the design is read and evaluated, and its hash is that of the text as stored', () => {
    const stored: unknown = JSON.parse(kept.designJson)
    expect(stored).toMatchObject({ formatVersion: format })
    expect(hashDesign(stored)).toBe(kept.designHash)
    const design = readStoredDesign(kept.designJson)
    expect(design.formatVersion).toBe(DESIGN_FORMAT_VERSION)
    expect(parseDesignText(kept.designJson)).toEqual({ ok: true, value: design })
    // Where nothing had to be lifted, nothing moved: the hash is the same.
    if (format === DESIGN_FORMAT_VERSION) expect(hashDesign(design)).toBe(kept.designHash)
    expect(evaluate(design).items.length).toBeGreaterThan(50)
  })

  test('the calculation keeps what was recorded, and lacks nothing that today’s screens ask for', () => {
    const results = readStoredResults(kept.resultsJson)
    expect(results.engineVersion).toBe(kept.engineVersion)
    const lifted = new Map(listLeaves(results))
    const recorded = listLeaves(JSON.parse(kept.resultsJson))
    expect(recorded.length).toBeGreaterThan(1000)
    for (const [path, value] of recorded) {
      // Whether a person stated it is told apart since; no number and no verdict may move.
      if (!path.endsWith('/basis')) expect(lifted.get(path), path).toEqual(value)
    }
    const today = evaluate(readStoredDesign(kept.designJson))
    for (const part of ['zones', 'bends', 'conductors', 'damage'] as const) {
      expect(results[part].length, part).toBe(today[part].length)
      expect(listLacking(results[part], today[part], part)).toEqual([])
    }
  })

  test('what was signed has its hash, and its design and results are read', () => {
    for (const { contentHash, contentJson } of kept.signatures) {
      expect(sha256Hex(contentJson)).toBe(contentHash)
      const signed = readSignedContent(contentJson)
      expect(hashDesign(signed.design)).toBe(kept.designHash)
      expect(readSignedDesign(signed)).toEqual(readStoredDesign(kept.designJson))
      expect(signed.results).toEqual(readStoredResults(kept.resultsJson))
    }
    expect(kept.signatures.length).toBe(name === 'pipit-rev-a' ? 1 : 0)
  })
})

describe.each(KEPT_FORMATS)('format %i', (format) => {
  test('the released package verifies, byte for byte', () => {
    const result = verifyPackage(readKeptPackage(format), { isStrict: true })
    expect(result.ok ? [] : result.issues).toEqual([])
    expect(result).toMatchObject({ value: { signatureCount: 1 } })
  })

  test('the proposal fits the design that it was made on', () => {
    const { baseHash, baseJson, patchJson } = readKeptProposal(format)
    const stored: unknown = JSON.parse(baseJson)
    expect(sha256Hex(canonicalJson(JSON.parse(baseJson)))).toBe(baseHash)
    const patch = readStoredPatch(patchJson)
    expect(patch.some(({ op }) => op !== 'test')).toBe(true)
    const proposed = getProposedDesign(stored, patch)
    expect(proposed.formatVersion).toBe(DESIGN_FORMAT_VERSION)
    expect(proposed).not.toEqual(readStoredDesign(baseJson))
  })
})

describe('what is damaged is refused by its place', () => {
  const { designJson, resultsJson, signatures } = readKeptRevision(1, 'pipit-rev-a')
  const change = (json: string, edit: (document: Record<string, unknown>) => void) => {
    const document = JSON.parse(json)
    edit(document)
    return JSON.stringify(document)
  }

  test.each([
    ['cut short', () => readStoredDesign(designJson.slice(0, -20)), 'a stored design is not JSON'],
    [
      'of a later format',
      () => readStoredDesign(change(designJson, (d) => Object.assign(d, { formatVersion: 99 }))),
      'format 99',
    ],
    ['of another kind', () => readStoredDesign('{"format":"other"}'), 'a stored design cannot be read'],
    ['without bends', () => readStoredDesign(change(designJson, (d) => Reflect.deleteProperty(d, 'bends'))), 'bends'],
    [
      'a text for a number',
      () => readStoredDesign(designJson.replace(/"angleDeg":\d+/, '"angleDeg":"90"')),
      'angleDeg',
    ],
    [
      'results without items',
      () => readStoredResults(change(resultsJson, (r) => Reflect.deleteProperty(r, 'items'))),
      'items',
    ],
    ['results of nothing', () => readStoredResults('null'), 'a stored calculation cannot be read'],
    [
      'a patch with an unknown operation',
      () => readStoredPatch('[{"op":"swap","path":"/name"}]'),
      'a proposal cannot be read',
    ],
    [
      'signed content without answers',
      () => readSignedContent(change(signatures[0]?.contentJson ?? '', (c) => Reflect.deleteProperty(c, 'answers'))),
      'answers',
    ],
  ])('%s', (_, act, place) => {
    expect(act).toThrow(StoredDocumentError)
    expect(act).toThrow(place)
  })

  test('but a value that a later rule would refuse is still read', () => {
    const design = readStoredDesign(change(designJson, (d) => Object.assign(d, { name: 'n'.repeat(5000) })))
    expect(design.name).toHaveLength(5000)
  })
})
