import { describe, expect, test } from 'vitest'
import { type Design, evaluate, type Layer, type ZoneResult } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'

function makeDoubleSided(): Design {
  const construction = findStartingConstruction('double-sided')
  if (construction === null) throw new Error('no double-sided construction')
  return construction.makeDesign('Trial')
}

function editLayer(design: Design, id: string, change: Partial<Extract<Layer, { kind: 'conductor' }>>): void {
  const layer = design.construction.layers.find((candidate) => candidate.id === id)
  if (layer === undefined) throw new Error(`no layer ${id}`)
  Object.assign(layer, change)
}

function getZone(design: Design, zoneId: string): ZoneResult {
  const zone = evaluate(design).zones.find((candidate) => candidate.zoneId === zoneId)
  if (zone === undefined) throw new Error(`no zone ${zoneId}`)
  return zone
}

function getThickness(zone: ZoneResult, layerId: string): number {
  const layer = zone.layers.find((candidate) => candidate.layerId === layerId)
  if (layer === undefined) throw new Error(`no layer ${layerId}`)
  return layer.nominalUm
}

describe('finished copper by zone', () => {
  test.each([
    ['none', 0, 15.6, 15.6],
    ['panel', 20, 35.6, 35.6],
    ['pattern', 20, 35.6, 35.6],
    // On pads alone: conductors stay as they are, and the pads are counted where a connector takes them.
    ['button', 20, 15.6, 15.6],
  ] as const)(
    '%s plating of %d um on 17.1 um foil less 1.5 um gives %d um outside and %d um in flex zones',
    (process, platingUm, stiffened, flex) => {
      const design = makeDoubleSided()
      const materialId = process === 'none' ? null : 'copper-plated'
      editLayer(design, 'l1', { plating: { process, thicknessUm: platingUm, toleranceUm: 0, materialId } })
      expect(getThickness(getZone(design, 'end-a'), 'l1')).toBeCloseTo(stiffened, 9)
      expect(getThickness(getZone(design, 'middle'), 'l1')).toBeCloseTo(flex, 9)
    },
  )

  test('a zone may set another coverage; without copper the layer has no thickness and leaves no gaps to fill', () => {
    const design = makeDoubleSided()
    const zone = design.construction.zones.find(({ id }) => id === 'middle')
    const presence = zone?.presence.find(({ layerId }) => layerId === 'l2')
    if (presence === undefined) throw new Error('no presence of l2')
    presence.coverageFraction = 0
    const result = getZone(design, 'middle')
    expect(getThickness(result, 'l2')).toBe(0)
    expect(getThickness(result, 'adhesive-bottom')).toBe(37.5)
    expect(result.defaultsUsed).toContain('L2 flex, return: no copper in this zone (coverage 0)')
  })
})

describe('adhesive flow', () => {
  test('coverlay adhesive loses the volume of the gaps: 37.5 um over 35.6 um copper at half coverage leaves 19.7 um', () => {
    const zone = getZone(makeDoubleSided(), 'middle')
    expect(getThickness(zone, 'adhesive-top')).toBeCloseTo(37.5 - 0.5 * 35.6, 9)
    expect(zone.layers.find(({ layerId }) => layerId === 'adhesive-top')?.asBoughtUm).toBe(37.5)
  })

  test('volume is kept: the zone is as thick as its sheets and the copper that its coverage makes up', () => {
    const zone = getZone(makeDoubleSided(), 'middle')
    // Films 25 + 25 + 25, adhesives 37.5 twice, copper 35.6 at coverages 0.5 and 0.6.
    expect(zone.thicknessUm).toBeCloseTo(75 + 75 + 35.6 * (0.5 + 0.6), 9)
  })

  test('the adhesive between foil and base film of a clad does not flow', () => {
    const design = findStartingConstruction('single-sided')?.makeDesign('Trial')
    if (design === undefined) throw new Error('no single-sided construction')
    expect(getThickness(getZone(design, 'tail'), 'clad-adhesive')).toBe(12.5)
  })

  test('a starved adhesive fills what it can, comes to nothing, and is a finding', () => {
    const design = makeDoubleSided()
    editLayer(design, 'adhesive-top', { thicknessUm: 12.5, toleranceMinusUm: 1, tolerancePlusUm: 1 })
    const zone = getZone(design, 'middle')
    expect(getThickness(zone, 'adhesive-top')).toBe(0)
    const [finding] = zone.encapsulation
    expect(finding).toMatchObject({ kind: 'decided', verdict: 'fails' })
    if (finding?.kind !== 'decided') throw new Error('not decided')
    expect(finding.value.value).toBeCloseTo(12.5 - 17.8, 9)
    expect(finding.places.map(({ id }) => id)).toEqual(['adhesive-top', 'l1', 'middle'])
  })

  test('an adhesive that suffices at nominal only has a thin margin', () => {
    const design = makeDoubleSided()
    editLayer(design, 'adhesive-top', { thicknessUm: 18.5, toleranceMinusUm: 2, tolerancePlusUm: 2 })
    expect(getZone(design, 'middle').encapsulation[0]).toMatchObject({ verdict: 'thin-margin' })
  })

  test('a bonding film between two conductor layers fills the gaps of both', () => {
    const design = findStartingConstruction('six-layer-unbonded-leaves')?.makeDesign('Trial')
    if (design === undefined) throw new Error('no six-layer construction')
    const zone = getZone(design, 'board-a')
    expect(getThickness(zone, 'bond-middle')).toBeCloseTo(50 - 2 * 0.4 * 10.5, 9)
  })

  test('a bondply with a carrier film gives a third of its sheet to each face, and says so', () => {
    const design = findStartingConstruction('six-layer-unbonded-leaves')?.makeDesign('Trial')
    if (design === undefined) throw new Error('no six-layer construction')
    const layer = design.construction.layers.find(({ id }) => id === 'bond-middle')
    if (layer?.kind !== 'bondply') throw new Error('no bondply')
    layer.materialId = 'bondply-acrylic-pi'
    layer.thicknessUm = 12
    const zone = getZone(design, 'board-a')
    // 4 um at hand on each face, 0.4 x 10.5 um needed: all of both faces is spent.
    expect(getThickness(zone, 'bond-middle')).toBeCloseTo(12 - 2 * 4, 9)
    expect(zone.defaultsUsed.join()).toContain('a third of the sheet')
  })
})

describe('tolerance of a zone', () => {
  test('worst case adds tolerances, copper with its coverage only, since thicker foil takes more adhesive', () => {
    const zone = getZone(makeDoubleSided(), 'middle')
    const halfUm = 3 * 2.5 + 2 * 5.63 + (1.71 + 4) * (0.5 + 0.6)
    expect(zone.worstCaseUm.high - zone.thicknessUm).toBeCloseTo(halfUm, 6)
    expect(zone.thicknessUm - zone.worstCaseUm.low).toBeCloseTo(halfUm, 6)
  })

  test('root sum square is narrower, and the shares of the variance add up to one', () => {
    const zone = getZone(makeDoubleSided(), 'end-a')
    expect(zone.rootSumSquareUm.low).toBeGreaterThan(zone.worstCaseUm.low)
    expect(zone.rootSumSquareUm.high).toBeLessThan(zone.worstCaseUm.high)
    const sum = zone.layers.reduce((total, { varianceShareFraction }) => total + varianceShareFraction, 0)
    expect(sum).toBeCloseTo(1, 12)
  })

  test('depths follow one another from the top face down to the thickness', () => {
    const zone = getZone(makeDoubleSided(), 'end-a')
    let depthUm = 0
    for (const layer of zone.layers) {
      expect(layer.topDepthUm).toBeCloseTo(depthUm, 9)
      depthUm += layer.nominalUm
    }
    expect(depthUm).toBeCloseTo(zone.thicknessUm, 9)
  })
})
