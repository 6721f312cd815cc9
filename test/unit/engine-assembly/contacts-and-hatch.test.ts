import { describe, expect, test } from 'vitest'
import { type Design, evaluate, parseDesign, type ZoneResult } from '@/lib/engine'
import { readDemoDesign } from './demo-design-files'

const FINGER = 'finger'

function getZone(design: Design, zoneId: string): ZoneResult {
  const zone = evaluate(design).zones.find((candidate) => candidate.zoneId === zoneId)
  if (zone === undefined) throw new Error(`no zone ${zoneId}`)
  return zone
}

function editPresence(design: Design, zoneId: string, layerId: string, fields: object): void {
  const zone = design.construction.zones.find(({ id }) => id === zoneId)
  const presence = zone?.presence.find((candidate) => candidate.layerId === layerId)
  if (presence === undefined) throw new Error(`layer ${layerId} is not in zone ${zoneId}`)
  Object.assign(presence, fields)
}

const getItem = (design: Design, itemId: string) => evaluate(design).items.find((item) => item.itemId === itemId)

describe('pads-only plating', () => {
  test('lies on no conductor, so that no adhesive has to cover it', () => {
    const design = readDemoDesign('skua-rev-b')
    for (const zone of evaluate(design).zones) {
      for (const { layerId, copper } of zone.layers) {
        if (layerId === 'l2' || layerId === 'l3') expect(copper?.platingUm).toBe(0)
      }
    }
    expect(getItem(design, 'copper-encapsulation')?.verdict).toBe('meets')
  })

  test.each([
    ['pads-only', 304.5],
    ['none', 284.5],
  ] as const)(
    'a connector end with contacts plated %s is %d um thick over them, finish of 4 um included',
    (platedCopper, um) => {
      const design = readDemoDesign('skua-rev-b')
      editPresence(design, FINGER, 'l2', { platedCopper })
      const { contact, thicknessUm } = getZone(design, FINGER)
      expect(thicknessUm).toBeCloseTo(280.5, 9)
      expect(contact?.thicknessUm).toBeCloseTo(um, 9)
    },
  )

  test('a connector end is not computed while nobody said whether its contacts are plated', () => {
    const design = readDemoDesign('skua-rev-b')
    editPresence(design, FINGER, 'l2', { platedCopper: null })
    expect(getItem(design, 'finger-thickness')).toMatchObject({ verdict: 'not-computed' })
    expect(getZone(design, FINGER).contact?.missing).toHaveLength(1)
  })

  test('a statement that contradicts the process is an issue of the document', () => {
    const design = readDemoDesign('skua-rev-b')
    editPresence(design, FINGER, 'l2', { platedCopper: 'whole' })
    const parsed = parseDesign(design)
    expect(parsed).toMatchObject({ ok: false, issues: [{ code: 'plating' }] })
  })

  test('panel plating may be kept off a zone, where the foil then stays as it is', () => {
    const design = readDemoDesign('skua-rev-a')
    expect(getZone(design, 'hinge').layers.find(({ layerId }) => layerId === 'l2')?.copper?.platingUm).toBe(25)
    editPresence(design, 'hinge', 'l2', { platedCopper: 'none' })
    expect(getZone(design, 'hinge').layers.find(({ layerId }) => layerId === 'l2')?.copper?.platingUm).toBe(0)
  })
})

describe('a conductor layer whose coverage is 0 in a zone', () => {
  test('is absent there for every item that counts layers or planes', () => {
    const design = readDemoDesign('skua-rev-a')
    const layer = design.construction.layers.find(({ id }) => id === 'l3')
    if (layer?.kind !== 'conductor') throw new Error('no layer l3')
    Object.assign(layer, { role: 'plane', planePattern: 'solid' })
    const counts = (itemId: string) =>
      getItem(design, itemId)?.outcomes.filter(({ places }) => places.some(({ id }) => id === 'hinge'))
    expect(counts('conductor-layers-in-bend')).toMatchObject([{ value: { value: 2 } }])
    expect(counts('plane-in-bend')).toMatchObject([{ verdict: 'fails' }])

    editPresence(design, 'hinge', 'l3', { coverageFraction: 0 })
    expect(counts('conductor-layers-in-bend')).toMatchObject([{ value: { value: 1 }, verdict: 'meets' }])
    expect(counts('plane-in-bend')).toEqual([])
    expect(counts('plating-in-bend')).toHaveLength(1)
  })
})

describe('a hatched plane', () => {
  const makeHatched = (hatch: object | null): Design => {
    const design = readDemoDesign('skua-rev-a')
    const layer = design.construction.layers.find(({ id }) => id === 'l3')
    if (layer?.kind !== 'conductor') throw new Error('no layer l3')
    Object.assign(layer, { role: 'plane', planePattern: 'hatched' })
    for (const { id, presence } of design.construction.zones) {
      if (presence.some(({ layerId }) => layerId === 'l3')) editPresence(design, id, 'l3', { hatch })
    }
    const supply = design.features.conductors.find(({ layerId }) => layerId === 'l3')
    Object.assign(supply ?? {}, { widthMm: 10 })
    return design
  }
  const getSupply = (design: Design) => evaluate(design).conductors.find(({ layerId }) => layerId === 'l3')

  test('covers the union of its bars, and a typed coverage beside bar and pitch is refused', () => {
    const design = makeHatched({ barMm: 0.2, pitchMm: 0.5, angleDeg: 45 })
    expect(getZone(design, 'hinge').layers.find(({ layerId }) => layerId === 'l3')?.coverageFraction).toBeCloseTo(
      0.64,
      12,
    )
    expect(parseDesign(design).ok).toBe(true)
    editPresence(design, 'hinge', 'l3', { coverageFraction: 0.64 })
    expect(parseDesign(design)).toMatchObject({ ok: false, issues: [{ code: 'coverage' }] })
  })

  test('of bars 0.4 of the pitch conducts 45 % of solid copper, not the 64 % that it covers', () => {
    const solid = makeHatched(null)
    const layer = solid.construction.layers.find(({ id }) => id === 'l3')
    Object.assign(layer ?? {}, { planePattern: 'solid' })
    const hatched = getSupply(makeHatched({ barMm: 0.2, pitchMm: 0.5, angleDeg: 45 }))
    const ratio = (getSupply(solid)?.capacityAmp ?? 0) / (hatched?.capacityAmp ?? 1)
    // Capacity goes with the section to the power 0.725.
    expect(ratio).toBeCloseTo(2.2230119 ** 0.725, 4)
  })

  test('of unknown bars is not computed, naming bar and pitch', () => {
    const design = makeHatched(null)
    expect(getSupply(design)?.missing).toMatchObject([{ label: expect.stringContaining('bar and pitch') }])
    expect(getItem(design, 'conductor-current')?.verdict).toBe('not-computed')
  })

  test('a ratio that is 0.2 but for rounding conducts', () => {
    expect(0.08 / 0.4).toBeLessThan(0.2)
    const hatched = getSupply(makeHatched({ barMm: 0.08, pitchMm: 0.4, angleDeg: 45 }))
    expect(hatched?.cannotTell).toBeNull()
    expect(hatched?.capacityAmp).toBeGreaterThan(0)
  })

  test.each([
    ['bars of a tenth of the pitch', { barMm: 0.05, pitchMm: 0.5, angleDeg: 45 }],
    ['bars of nine tenths', { barMm: 0.45, pitchMm: 0.5, angleDeg: 45 }],
    ['three pitches wider than the conductor', { barMm: 2, pitchMm: 5, angleDeg: 45 }],
  ])('nobody can tell for %s', (_, hatch) => {
    const design = makeHatched(hatch)
    const result = getSupply(design)
    expect(result).toMatchObject({ capacityAmp: null, resistanceOhm: null, riseDegC: null })
    expect(result?.cannotTell).not.toBeNull()
    expect(getItem(design, 'conductor-current')?.verdict).toBe('cannot-tell')
  })
})

describe('a no-flow prepreg', () => {
  test('fills no more than the resin of it that flows', () => {
    const margin = (flow: number): number => {
      const design = readDemoDesign('skua-rev-a')
      const layer = design.construction.layers.find(({ kind }) => kind === 'no-flow-prepreg')
      const conductorBeside = design.construction.layers.find(({ id }) => id === 'l2')
      if (layer?.kind !== 'no-flow-prepreg' || conductorBeside === undefined) throw new Error('no prepreg')
      const constant = (value: number) => ({ value, sourceKey: 'materialConstantsRecalled', spread: null })
      design.materials = [
        {
          id: 'own-prepreg',
          name: 'Own prepreg',
          kind: 'prepreg',
          specification: '',
          modulusGpa: constant(18),
          poisson: constant(0.15),
          densityGPerCm3: null,
          maxServiceDegC: null,
          maxSolderDegC: null,
          relativePermittivity: null,
          expansionPpmPerC: null,
          yieldStrainPct: null,
          flowFraction: Number.isNaN(flow) ? null : constant(flow),
          foil: null,
          note: '',
        },
      ]
      layer.materialId = 'own-prepreg'
      // Straight on the copper, as where no coverlay reaches under the rigid part.
      const board = design.construction.zones.find(({ id }) => id === 'controller')
      if (board === undefined) throw new Error('no board')
      board.presence = board.presence.filter(({ layerId }) => !/cover/.test(layerId))
      const outcome = getZone(design, 'controller').encapsulation.find(({ places }) =>
        places.some(({ id }) => id === layer.id),
      )
      if (outcome === undefined) throw new Error('the prepreg touches no copper')
      return outcome.kind === 'decided' ? outcome.value.value : Number.NaN
    }
    expect(margin(1)).toBeGreaterThan(margin(0.5))
    expect(margin(0.1)).toBeLessThan(0)
    expect(margin(0.1)).toBeCloseTo(margin(1) - 0.9 * 65, 6)
    expect(margin(Number.NaN), 'not known how much flows').toBeNaN()
  })
})
