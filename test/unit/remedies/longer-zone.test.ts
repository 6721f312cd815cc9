import { describe, expect, it } from 'vitest'
import { type Design, evaluate, getOutcomeVerdict, UNKNOWN_IMPEDANCE } from '@/lib/engine'
import { applyDesignPatch, findRemedies } from '@/lib/engine/remedies'
import { RANKED_FAMILIES } from '@/lib/engine/remedies/families'
import { change, getEntry, readDemo } from './demo'

const TRIED = ['pads-only-plating', 'larger-radius', 'longer-zone']
const options = {
  leftOutFamilies: RANKED_FAMILIES.map(({ family }) => family).filter((family) => !TRIED.includes(family)),
}
const skua = readDemo('skua-rev-a')

function lengthen(design: Design) {
  const { remedies } = findRemedies(design, 'hinge', options)
  const remedy = remedies.find(({ id }) => id.startsWith('pads-only-plating:bend+larger-radius:meets+longer-zone'))
  if (remedy === undefined) throw new Error('the zone gets longer')
  return { remedy, edited: applyDesignPatch(design, remedy.patch) }
}

const zoneLengthOf = ({ construction }: Design): number => getEntry(construction.zones, 'hinge').lengthMm ?? Number.NaN

const dropsOf = (design: Design) =>
  new Map(
    evaluate(design)
      .items.find(({ itemId }) => itemId === 'voltage-drop')
      ?.outcomes.map((outcome) => [outcome.places[0]?.id, getOutcomeVerdict(outcome)]),
  )

describe('a zone that gets longer', () => {
  const { edited, remedy } = lengthen(skua)
  const addedMm = zoneLengthOf(edited) - zoneLengthOf(skua)

  it('has its conductors get as much longer', () => {
    expect(addedMm).toBeGreaterThan(80)
    for (const { id, lengthMm } of skua.features.conductors) {
      expect(getEntry(edited.features.conductors, id).lengthMm, id).toBeCloseTo((lengthMm ?? 0) + addedMm, 9)
    }
    const agreement = evaluate(edited).items.find(({ itemId }) => itemId === 'statements-agree')
    expect(JSON.stringify(agreement?.outcomes)).not.toContain('that it crosses')
  })

  it('leaves the length of one that crosses another bend alone', () => {
    const elsewhere = change(skua, (d) => {
      const supply = getEntry(d.features.conductors, 'supply')
      supply.crossings = supply.crossings.map((crossing) => ({ ...crossing, bendId: 'fold' }))
    })
    expect(getEntry(lengthen(elsewhere).edited.features.conductors, 'supply').lengthMm).toBe(90)
  })

  it('makes a conductor as wide as its voltage drop needs, and no wider than that asks', () => {
    const narrow = change(edited, (d) => {
      for (const { id, widthMm } of skua.features.conductors) getEntry(d.features.conductors, id).widthMm = widthMm
    })
    expect(dropsOf(narrow).get('supply')).toBe('fails')
    expect([...dropsOf(edited).values()]).toEqual(['meets', 'meets', 'meets', 'meets'])
    // R = rho L / (w t): at the worst corner too, and 0.02 mm is more than widths are rounded by.
    const supply = getEntry(edited.features.conductors, 'supply')
    const slimmer = change(edited, (d) => {
      getEntry(d.features.conductors, 'supply').widthMm = (supply.widthMm ?? 0) - 0.02
    })
    expect(dropsOf(slimmer).get('supply')).toBe('thin-margin')
    expect(remedy.changes.at(-1)?.detail).toContain(`Sensor supply 0.6 mm to ${supply.widthMm} mm`)
  })

  it('takes the room for it out of the width of the bend', () => {
    const shareOf = ({ construction }: Design) =>
      getEntry(construction.zones, 'hinge').presence.find(({ layerId }) => layerId === 'l3')?.coverageFraction ??
      construction.layers.flatMap((layer) =>
        layer.id === 'l3' && layer.kind === 'conductor' ? [layer.coverageFraction] : [],
      )[0] ??
      Number.NaN
    const widthOf = ({ features }: Design) =>
      features.conductors
        .filter(({ layerId }) => layerId === 'l3')
        .reduce((sum, { widthMm }) => sum + (widthMm ?? 0), 0)
    // 18 mm of axis; shares are kept to a tenth of a per cent.
    expect(shareOf(edited) - shareOf(skua)).toBeCloseTo((widthOf(edited) - widthOf(skua)) / 18, 3)
  })

  it('keeps the width that an impedance rests on, and names the drop that is too large then', () => {
    const ofItsOwn = change(skua, (d) => {
      getEntry(d.features.conductors, 'supply').impedanceOhm = 50
    })
    const ofItsClass = change(skua, (d) => {
      const { tolerancePct, kind, referenceLayerId, coupon } = UNKNOWN_IMPEDANCE
      const terms = { tolerancePct, kind, referenceLayerId, coupon }
      const needs = { impedanceOhm: 50, crosstalkLimitPct: null, riseTimePs: null }
      d.features.netClasses.push({ id: 'matched', name: 'Matched', ...needs, ...terms })
      getEntry(d.features.conductors, 'supply').netClassId = 'matched'
    })
    for (const matched of [ofItsOwn, ofItsClass]) {
      const kept = lengthen(matched)
      expect(getEntry(kept.edited.features.conductors, 'supply').widthMm).toBe(0.6)
      expect(kept.remedy.forbiddenBy).toMatchObject([{ kind: 'voltage-drop', name: 'Sensor supply' }])
    }
  })
})
