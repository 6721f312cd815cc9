import { describe, expect, test } from 'vitest'
import { addBend, addZone, insertLayer, updateBend } from '@/app/_components/engineering/draft/design-edits'
import { makeDraft, reduceDraft } from '@/app/_components/engineering/draft/draft-state'
import {
  confirmAssumed,
  type Design,
  evaluate,
  listAssumptions,
  listStiffeners,
  makeLayerOfKind,
  parseDesign,
} from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { compareDesigns, findGapsInConstruction } from '@/lib/review'

const [first] = listStartingConstructions()
if (first === undefined) throw new Error('there are starting constructions')
const starting = first.makeDesign('Assumed')
const confirmed: Design = { ...starting, assumed: [] }
const marksOf = (design: Design) => design.assumed.filter((mark) => !starting.assumed.includes(mark))

describe('a starting construction', () => {
  test.each(listStartingConstructions().map(({ id, makeDesign }) => [id, makeDesign('S')] as const))(
    '%s proposes, and states neither a connector’s window nor cycles that nobody asked for',
    (_id, design) => {
      expect(parseDesign(design).ok).toBe(true)
      for (const { connectorWindow } of design.construction.zones) expect(connectorWindow).toBeNull()
      for (const { requiredCycles } of design.bends) expect(requiredCycles).toBeNull()
      for (const { id } of design.bends) expect(design.assumed).toContain(`bends.${id}.insideRadiusMm`)
      for (const { id } of design.construction.zones) expect(design.assumed).toContain(`zones.${id}.lengthMm`)
      for (const { id } of design.features.conductors) expect(design.assumed).toContain(`conductors.${id}.widthMm`)
      expect(listAssumptions(design)).toHaveLength(design.assumed.length)
    },
  )

  test('keeps its review from going on until what it proposed is confirmed', () => {
    const said = findGapsInConstruction(starting).map(({ sentence }) => sentence)
    expect(said.filter((sentence) => sentence.includes('nobody has confirmed')).length).toBeGreaterThan(2)
    const left = findGapsInConstruction(confirmAssumed(starting, starting.assumed)).map(({ sentence }) => sentence)
    expect(left.filter((sentence) => sentence.includes('nobody has confirmed'))).toEqual([])
  })

  test('says with each figure that it rests on what is assumed, and moves no number by that', () => {
    const [assumed, plain] = [evaluate(starting), evaluate(confirmed)]
    const strain = (of: typeof assumed) => of.items.find(({ itemId }) => itemId === 'bend-strain')
    const cautionsOf = (of: typeof assumed) =>
      strain(of)?.outcomes.flatMap((outcome) => (outcome.kind === 'decided' ? outcome.cautions : [])) ?? []
    expect(strain(assumed)?.verdict).toBe(strain(plain)?.verdict)
    expect(cautionsOf(assumed).some((text) => /assumed and not confirmed: .*inside radius/.test(text))).toBe(true)
    expect(cautionsOf(plain).some((text) => text.includes('assumed'))).toBe(false)
  })
})

describe('what an editor adds', () => {
  test('a bend, a zone and a layer are marked where they must hold some value', () => {
    expect(marksOf(addBend(starting))).toEqual(
      ['zoneId', 'insideRadiusMm', 'radiusToleranceMm', 'angleDeg', 'insideFace', 'axisLengthMm', 'motion'].map(
        (field) => `bends.bend-2.${field}`,
      ),
    )
    expect(marksOf(addZone(starting)).every((mark) => /^zones\..*\.(kind|presence)$/.test(mark))).toBe(true)
    const layer = makeLayerOfKind(starting, 'conductor', { id: 'new', name: 'New', from: null })
    expect(marksOf(insertLayer(starting, 0, layer))).toContain('layers.new.coverageFraction')
    expect(marksOf(insertLayer(starting, 0, layer))).toContain('layers.new.thicknessUm')
  })

  test('a value that is changed is no longer assumed; undo brings the mark back with the value', () => {
    const bendId = starting.bends[0]?.id ?? ''
    const mark = `bends.${bendId}.insideRadiusMm`
    const edited = reduceDraft(makeDraft(starting, 1), {
      type: 'edit',
      key: 'radius',
      change: (design) => updateBend(design, bendId, (bend) => ({ ...bend, insideRadiusMm: 7 })),
    })
    expect(edited.design.assumed).not.toContain(mark)
    expect(edited.design.assumed).toHaveLength(starting.assumed.length - 1)
    expect(reduceDraft(edited, { type: 'undo' }).design.assumed).toContain(mark)
  })

  test('marks of what is removed go with it', () => {
    const without = reduceDraft(makeDraft(starting, 1), {
      type: 'edit',
      key: 'remove',
      change: (design) => ({ ...design, bends: [] }),
    })
    expect(without.design.assumed.some((mark) => mark.startsWith('bends.'))).toBe(false)
  })

  test('a confirmation is a change that is told', () => {
    const [mark] = starting.assumed
    if (mark === undefined) throw new Error('it assumes something')
    expect(compareDesigns(starting, confirmAssumed(starting, [mark])).map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/ confirmed$/),
    ])
  })
})

describe('features that are entered without their sizes', () => {
  const empty = { nearestBend: null, transitionDistanceMm: null }
  const design: Design = {
    ...confirmed,
    features: {
      ...confirmed.features,
      holes: [
        {
          id: 'h',
          name: 'Hole',
          zoneId: null,
          plated: null,
          fromLayerId: null,
          toLayerId: null,
          filling: null,
          wallPlatingUm: null,
          drillMm: null,
          landMm: null,
          stiffenerEdgeDistanceMm: null,
          stiffenerHoleMm: null,
          clearOfBends: null,
          ...empty,
        },
      ],
      slits: [{ id: 's', name: 'Slit', endReliefDiameterMm: null, widthMm: null, tearStop: null }],
      outlineCorners: [
        { id: 'c', name: 'Corner', insideRadiusMm: null, bordersFlex: null, isPulled: null, tearStop: null },
      ],
      pads: [
        {
          id: 'p',
          name: 'Pad',
          layerId: 'l1',
          zoneId: null,
          hasPlatedHole: null,
          anchorCount: null,
          coverlayCaptureMm: null,
          teardrop: null,
          nearestBend: null,
          clearOfBends: null,
        },
      ],
      widthSteps: [
        {
          id: 'w',
          name: 'Step',
          layerId: 'l1',
          wideMm: null,
          narrowMm: null,
          taperLengthMm: null,
          nearestBend: null,
          clearOfBends: null,
        },
      ],
      coverlayOpenings: [
        {
          id: 'o',
          name: 'Opening',
          method: null,
          openingMm: null,
          webMm: null,
          landMm: null,
          neededOpenMm: null,
          nearestBend: null,
          clearOfBends: null,
        },
      ],
      components: [
        {
          id: 'u',
          name: 'U1',
          nearestBend: { bendId: confirmed.bends[0]?.id ?? '', distanceMm: null },
          clearOfBends: null,
          transitionDistanceMm: null,
          zoneId: null,
          side: null,
          overStiffener: null,
        },
      ],
    },
  }

  test('are read, fail nothing, and each missing size is named', () => {
    expect(parseDesign(design)).toMatchObject({ ok: true })
    const items = new Map(evaluate(design).items.map((item) => [item.itemId, item]))
    const before = new Map(evaluate(confirmed).items.map((item) => [item.itemId, item.verdict]))
    for (const [itemId, item] of items) {
      if (item.verdict === 'fails') expect(before.get(itemId), itemId).toBe('fails')
    }
    const missingOf = (itemId: string) =>
      items.get(itemId)?.outcomes.flatMap((each) => (each.kind === 'not-computed' ? each.missing : [])) ?? []
    expect(missingOf('annular-ring')).toMatchObject([{ path: ['features', 'holes', 0, 'plated'] }])
    expect(missingOf('slit-end-relief')).toMatchObject([{ path: ['features', 'slits', 0, 'endReliefDiameterMm'] }])
    expect(missingOf('corner-radius')).toMatchObject([{ path: ['features', 'outlineCorners', 0, 'insideRadiusMm'] }])
    expect(missingOf('land-hold')).toMatchObject([{ path: ['features', 'pads', 0, 'hasPlatedHole'] }])
    expect(missingOf('width-step').map(({ path }) => path.at(-1))).toEqual(['wideMm', 'narrowMm', 'taperLengthMm'])
    expect(missingOf('coverlay-opening')).toMatchObject([{ path: ['features', 'coverlayOpenings', 0, 'openingMm'] }])
    expect(missingOf('component-to-bend')).toMatchObject([
      { path: ['features', 'components', 0, 'nearestBend', 'distanceMm'] },
    ])
  })
})

describe('stiffeners', () => {
  test('are those of the construction: a layer without details is one whose details are missing', () => {
    const layers = confirmed.construction.layers.filter(({ kind }) => kind === 'stiffener')
    expect(layers.length).toBeGreaterThan(0)
    const bare = { ...confirmed, features: { ...confirmed.features, stiffeners: [] } }
    expect(listStiffeners(bare).map(({ layerId }) => layerId)).toEqual(layers.map(({ id }) => id))
    const detail = evaluate(bare).items.find(({ itemId }) => itemId === 'stiffener-detail')
    expect(detail?.verdict).toBe('not-computed')
    expect(detail?.outcomes).toHaveLength(layers.length)
  })
})
