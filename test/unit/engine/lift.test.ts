import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  DESIGN_FORMAT_VERSION,
  evaluate,
  liftDesign,
  parseDesign,
  parseDesignText,
  readStoredDesign,
} from '@/lib/engine'

const readFixture = (name: string) => readFileSync(`test/fixtures/designs/format-1/${name}.json`, 'utf8')

/** Every leaf of a document by its path, so that two documents can be held against each other. */
function listLeaves(node: unknown, path = ''): Map<string, unknown> {
  if (typeof node !== 'object' || node === null) return new Map([[path, node]])
  return new Map(Object.entries(node).flatMap(([key, inner]) => [...listLeaves(inner, `${path}/${key}`)]))
}

describe('designs of format 1', () => {
  test.each(['skua-rev-a', 'pipit-rev-a'])('%s is read, and nothing that was typed is lost', (name) => {
    const text = readFixture(name)
    const parsed = parseDesignText(text)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    expect(parsed.value.formatVersion).toBe(DESIGN_FORMAT_VERSION)
    const lifted = listLeaves(parsed.value)
    for (const [path, value] of listLeaves(JSON.parse(text))) {
      // The one use that could be stated became a set of one.
      if (path === '/brief/installationUse') expect(lifted.get('/brief/installationUses/0'), path).toEqual(value)
      else if (path !== '/formatVersion') expect(lifted.get(path), path).toEqual(value)
    }
    expect(readStoredDesign(text)).toEqual(parsed.value)
  })

  test('what plates the copper becomes a material of its own, and where pads-only plating goes is asked where nobody said', () => {
    const parsed = parseDesignText(readFixture('skua-rev-a'))
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    const { layers, zones } = parsed.value.construction
    for (const layer of layers) {
      if (layer.kind !== 'conductor') continue
      expect(layer.plating.materialId).toBe(layer.plating.process === 'none' ? null : 'copper-plated')
    }
    const padsOnly = new Set(
      layers.flatMap((layer) => (layer.kind === 'conductor' && layer.plating.process === 'button' ? [layer.id] : [])),
    )
    for (const zone of zones) {
      for (const { layerId, platedCopper } of zone.presence) {
        const meant = { flex: 'none', rigid: 'pads-only', stiffened: 'pads-only', finger: null }[zone.kind]
        expect(platedCopper).toBe(padsOnly.has(layerId) ? meant : null)
      }
    }
  })

  test('own materials keep their constants, with a spread that nobody stated', () => {
    const document = JSON.parse(readFixture('skua-rev-a'))
    document.materials = [
      {
        id: 'own-film',
        name: 'Own film',
        kind: 'polymer-film',
        specification: '',
        modulusGpa: { value: 3.1, sourceKey: 'materialConstantsRecalled' },
        poisson: { value: 0.34, sourceKey: 'materialConstantsRecalled' },
        densityGPerCm3: null,
        maxServiceDegC: null,
        relativePermittivity: null,
        foil: null,
        note: '',
      },
    ]
    const parsed = parseDesign(document)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    expect(parsed.value.materials[0]).toMatchObject({
      modulusGpa: { value: 3.1, sourceKey: 'materialConstantsRecalled', spread: null },
      expansionPpmPerC: null,
      yieldStrainPct: null,
      flowFraction: null,
    })
  })
})

describe('other documents', () => {
  test('one of a later format is refused by name, not read with a loss', () => {
    const document = { ...JSON.parse(readFixture('pipit-rev-a')), formatVersion: DESIGN_FORMAT_VERSION + 1 }
    const parsed = parseDesign(document)
    expect(parsed).toMatchObject({ ok: false, issues: [{ code: 'newer-format', path: ['formatVersion'] }] })
  })

  test.each([null, 7, 'text', [], {}, { format: 'other', formatVersion: 1 }])('%j comes back as it was', (value) => {
    expect(liftDesign(value)).toBe(value)
    expect(parseDesign(value).ok).toBe(false)
  })

  test.each([0, -1, 1.5, '1', null])('a format version of %j is refused at its path', (formatVersion) => {
    const parsed = parseDesign({ ...JSON.parse(readFixture('pipit-rev-a')), formatVersion })
    expect(parsed.ok).toBe(false)
    if (!parsed.ok) expect(parsed.issues.map(({ path }) => path.join('.'))).toContain('formatVersion')
  })
})

test('whether a layer of conductors and planes has a plane is asked of older documents, which had one word for none and not stated', () => {
  const parsed = parseDesignText(readFixture('skua-rev-a'))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const mixed = parsed.value.construction.layers.filter((layer) => layer.kind === 'conductor' && layer.role === 'mixed')
  expect(mixed).toMatchObject([{ planePattern: null }])
  const found = evaluate(parsed.value).items.find(({ itemId }) => itemId === 'plane-in-bend')
  expect(found?.verdict).toBe('not-computed')
  for (const layer of mixed) Object.assign(layer, { planePattern: 'none' })
  expect(evaluate(parsed.value).items.find(({ itemId }) => itemId === 'plane-in-bend')?.verdict).toBe('not-applicable')
  for (const layer of mixed) Object.assign(layer, { role: 'plane' })
  expect(parseDesign(parsed.value)).toMatchObject({ ok: false, issues: [{ code: 'plane' }] })
})
