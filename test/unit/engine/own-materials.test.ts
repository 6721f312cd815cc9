import { describe, expect, it } from 'vitest'
import {
  draftFrom,
  draftOf,
  EMPTY_DRAFT,
  readDraft,
  withTexts,
} from '@/app/workspace/library/_components/material-form-state'
import { citeSource, listLibraryMaterials } from '@/lib/engine'
import {
  findOwnMaterialIssues,
  listMaterialsFor,
  type Material,
  makeBlankDesign,
  makeOwnMaterialId,
  readOwnMaterialId,
  withTakenMaterials,
} from '@/lib/engine/design'
import { makeOwnMaterial } from '@/test/factories/own-materials'

const withoutId = ({ id: _, ...record }: Material) => record
const own: Material = { ...makeOwnMaterial(), id: makeOwnMaterialId('own-film-1', 2) }

describe('a material of one’s own', () => {
  it('may take over any figure of the library with its source, and no other figure under that source', () => {
    for (const material of listLibraryMaterials()) {
      if (material.foil?.type === 'plated') continue
      expect(findOwnMaterialIssues(withoutId(material))).toEqual([])
      const { sourceKey, spread, value } = material.modulusGpa
      const moved = { ...withoutId(material), modulusGpa: { value: value * 1.01, sourceKey, spread: null } }
      expect(findOwnMaterialIssues(moved)).toMatchObject([{ code: 'source-says-otherwise' }])
      // Nor by the words in which the program cites it.
      const cited = citeSource(sourceKey as Parameters<typeof citeSource>[0])
      const inWords = { ...moved, modulusGpa: { ...moved.modulusGpa, sourceKey: ` ${cited} ` } }
      expect(findOwnMaterialIssues(inWords)).toMatchObject([{ code: 'source-says-otherwise' }])
      if (spread === null) continue
      const wider = { ...material.modulusGpa, spread: { ...spread, low: spread.low * 0.97 } }
      expect(findOwnMaterialIssues({ ...withoutId(material), modulusGpa: wider })).toMatchObject([
        { path: ['modulusGpa', 'spread', 'sourceKey'] },
      ])
    }
  })

  it('says where each figure comes from, and is no copper of a plating bath', () => {
    expect(findOwnMaterialIssues(makeOwnMaterial())).toEqual([])
    for (const sourceKey of ['tbd', '–', 'n/a']) {
      const poisson = { value: 0.3, sourceKey, spread: null }
      expect(findOwnMaterialIssues(makeOwnMaterial({ poisson }))).toMatchObject([{ code: 'no-source' }])
    }
    expect(findOwnMaterialIssues(makeOwnMaterial({ kind: 'copper-foil' }))).toMatchObject([{ code: 'foil-data' }])
    const plated = listLibraryMaterials().find(({ foil }) => foil?.type === 'plated')
    if (plated === undefined) throw new Error('the library has plated copper')
    expect(findOwnMaterialIssues(withoutId(plated))).toMatchObject([{ path: ['foil', 'type'] }])
  })

  it('is offered after the library, so that no layer becomes one by itself', () => {
    const design = makeBlankDesign('X')
    expect(listMaterialsFor(design, 'base-film', [own]).map(({ id }) => id)).toContain(own.id)
    expect(listMaterialsFor(design, 'base-film', [own])[0]?.id).not.toBe(own.id)
    expect(listMaterialsFor(design, 'conductor', [own]).some(({ foil }) => foil?.type === 'plated')).toBe(false)
  })

  it('comes into a design with the layer that is made of it, and goes with it', () => {
    expect(readOwnMaterialId(own.id)).toEqual({ entryId: 'own-film-1', version: 2 })
    expect(readOwnMaterialId('pi-film-v2')).toBeNull()
    const layer = {
      id: 'film',
      name: 'Film',
      kind: 'base-film',
      thicknessUm: 25,
      tolerancePlusUm: 0,
      toleranceMinusUm: 0,
      materialId: own.id,
    } as const
    const blank = makeBlankDesign('X')
    const made = { ...blank, construction: { layers: [layer], zones: [] } }
    const taken = withTakenMaterials(made, [own])
    expect(taken.materials).toEqual([own])
    expect(withTakenMaterials(taken, [])).toBe(taken)
    const imported = { ...own, id: 'from-a-file' }
    const left = { ...taken, materials: [imported, own], construction: blank.construction }
    expect(withTakenMaterials(left, [own]).materials).toEqual([imported])
  })
})

describe('the form of a material', () => {
  it('reads back what it shows, of every material of the library', () => {
    for (const material of listLibraryMaterials()) {
      if (material.foil?.type === 'plated') continue
      expect(readDraft(draftOf(withoutId(material)))).toEqual({ ok: true, material: withoutId(material) })
    }
    expect(readDraft(draftOf(makeOwnMaterial()))).toEqual({ ok: true, material: makeOwnMaterial() })
  })

  it('asks for a source of its own as soon as a figure is changed', () => {
    const [film] = listLibraryMaterials().filter(({ kind }) => kind === 'polymer-film')
    if (film === undefined) throw new Error('the library has films')
    const begun = { ...draftFrom(withoutId(film)), name: 'Film of ours' }
    expect(readDraft(begun)).toMatchObject({ ok: true, material: { name: 'Film of ours', note: '' } })
    const changed = withTexts(begun, 'modulusGpa', { value: '4.44', low: '4', high: '5' })
    expect(changed.constants.modulusGpa?.source).toBe('')
    const reading = readDraft(changed)
    expect(reading.ok ? null : [...reading.problems]).toEqual([
      ['modulusGpa', 'say where the value comes from: a data sheet, a test report'],
    ])
    const sourced = withTexts(changed, 'modulusGpa', { source: 'maker’s data sheet of 2026' })
    expect(readDraft(sourced)).toMatchObject({
      ok: true,
      material: { modulusGpa: { value: 4.44, sourceKey: 'maker’s data sheet of 2026', spread: { low: 4, high: 5 } } },
    })
  })

  it('names each entry that cannot be used', () => {
    const wrong = withTexts(
      withTexts(withTexts(EMPTY_DRAFT, 'modulusGpa', { value: '3,2', source: 'x1' }), 'poisson', {
        value: '0.7',
        source: 'x1',
      }),
      'densityGPerCm3',
      { value: '1.4', low: '1.3', source: 'x1' },
    )
    const reading = readDraft(wrong)
    expect(reading.ok ? null : Object.fromEntries(reading.problems)).toEqual({
      name: 'is empty',
      modulusGpa: '"3,2" contains a comma: write decimals with a point.',
      poisson: 'must be below 0.5',
      densityGPerCm3: 'state both ends of the range, or neither',
    })
  })
})
