import { describe, expect, test } from 'vitest'
import { type BendResult, type Design, evaluate, parseDesign } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import { readDemoDesign } from './demo-design-files'

function makeDesign(id: string): Design {
  const construction = findStartingConstruction(id)
  if (construction === null) throw new Error(`no construction ${id}`)
  return construction.makeDesign('Trial')
}

function getFirstBend(design: Design): BendResult {
  const [bend] = evaluate(design).bends
  if (bend === undefined) throw new Error('no bend')
  return bend
}

function editBend(design: Design, change: Partial<Design['bends'][number]>): Design {
  const [bend] = design.bends
  if (bend === undefined) throw new Error('no bend')
  Object.assign(bend, change)
  return design
}

describe('a bend and its zone', () => {
  test('depth runs from the inside face: the other face inside mirrors the strains', () => {
    const below = getFirstBend(editBend(readDemoDesign('skua-rev-b'), { insideFace: 'bottom' }))
    const above = getFirstBend(editBend(readDemoDesign('skua-rev-b'), { insideFace: 'top' }))
    const [first] = below.conductors
    const [second] = above.conductors
    expect(first?.innerDepthUm).toBeCloseTo(below.sectionThicknessUm - (second?.outerDepthUm ?? 0), 9)
    expect(first?.innerDepthUm).not.toBeCloseTo(second?.innerDepthUm ?? 0, 3)
  })

  test('mirroring construction and bend together changes nothing', () => {
    const design = readDemoDesign('skua-rev-a')
    const mirrored = readDemoDesign('skua-rev-a')
    mirrored.construction.layers.reverse()
    for (const bend of mirrored.bends) bend.insideFace = bend.insideFace === 'top' ? 'bottom' : 'top'
    const [before, after] = [getFirstBend(design), getFirstBend(mirrored)]
    expect(after.peakStrainPct).toBeCloseTo(before.peakStrainPct ?? 0, 9)
    expect(after.momentNmm).toBeCloseTo(before.momentNmm ?? 0, 9)
    expect(after.survivalLifeCycles).toBeCloseTo(before.survivalLifeCycles ?? 0, 3)
  })

  test('the strain profile is continuous inside a leaf and ends at the faces of the section', () => {
    const bend = getFirstBend(readDemoDesign('skua-rev-a'))
    expect(bend.strainProfile[0]?.depthUm).toBe(0)
    expect(bend.strainProfile.at(-1)?.depthUm).toBeCloseTo(bend.sectionThicknessUm, 9)
    for (let at = 2; at < bend.strainProfile.length; at += 2) {
      expect(bend.strainProfile[at]?.strainPct).toBeCloseTo(bend.strainProfile[at - 1]?.strainPct ?? Number.NaN, 12)
    }
  })
})

describe('unbonded leaves', () => {
  const design = makeDesign('six-layer-unbonded-leaves')
  const bend = getFirstBend(design)

  test('bend each about its own axis, at its own radius', () => {
    expect(bend.leaves).toHaveLength(2)
    const [inner, outer] = bend.leaves
    if (inner === undefined || outer === undefined) throw new Error('two leaves expected')
    expect(inner.insideRadiusMm).toBe(4)
    expect(outer.insideRadiusMm).toBeCloseTo(4 + (inner.thicknessUm + 75) / 1000, 12)
    expect(outer.neutralAxisDepthUm).toBeGreaterThan(inner.thicknessUm + 75)
    // Lengths differ by angle times the distance of the axes, whatever the radius.
    expect(bend.leafLengthDifferenceMm).toBeCloseTo(
      (Math.PI * (outer.formedAxisDepthUm - inner.formedAxisDepthUm)) / 1000,
      12,
    )
  })

  test('strain the copper less than the same layers bonded together', () => {
    const bonded = makeDesign('six-layer-unbonded-leaves')
    const link = bonded.construction.zones.find(({ id }) => id === 'link')
    if (link === undefined) throw new Error('no link')
    link.presence = link.presence.map((entry) =>
      entry.layerId === 'gap' ? { ...entry, layerId: 'bond-middle' } : entry,
    )
    const together = getFirstBend(bonded)
    expect(together.leaves).toHaveLength(1)
    expect(together.peakStrainPct).toBeGreaterThan(2 * (bend.peakStrainPct ?? 0))
  })
})

describe('inputs that are missing', () => {
  test('a bend without use has strains, but no allowable, and names the field', () => {
    const bend = getFirstBend(editBend(readDemoDesign('skua-rev-a'), { use: null }))
    expect(bend.peakStrainPct).toBeGreaterThan(0)
    expect(bend.allowablePct).toBeNull()
    expect(bend.missing).toContainEqual({ path: ['bends', 0, 'use'], label: 'use of bend Mirror hinge' })
  })

  test('a dynamic bend without cycles has a life, but no allowable, and names the field', () => {
    const bend = getFirstBend(editBend(readDemoDesign('skua-rev-a'), { requiredCycles: null }))
    expect(bend.survivalLifeCycles).toBeGreaterThan(0)
    expect(bend.allowablePct).toBeNull()
    expect(bend.missing).toContainEqual({
      path: ['bends', 0, 'requiredCycles'],
      label: 'required cycles of bend Mirror hinge',
    })
  })

  test('no published allowable for electrodeposited foil that is flexed to install: said, not defaulted', () => {
    const design = readDemoDesign('pipit-rev-a')
    for (const layer of design.construction.layers) if (layer.kind === 'conductor') layer.materialId = 'copper-ed'
    const bend = getFirstBend(design)
    expect(bend.allowablePct).toBeNull()
    expect(bend.handbook.minRadiusMm).toBeNull()
    expect(bend.missing.map(({ label }) => label).join()).toContain('for flexing to install')
  })

  test('nobody can tell of a life that no relation reaches; a life that falls short of it fails', () => {
    const design = editBend(readDemoDesign('skua-rev-b'), { requiredCycles: 1e12 })
    design.brief.lifeSurvivalPct = 99.9
    const bend = getFirstBend(design)
    expect(bend.allowablePct).toBeNull()
    expect(bend.minRadiusByLifeMm).toBeNull()
    const verdict = (id: string) => evaluate(design).items.find(({ itemId }) => itemId === id)?.verdict
    expect(bend.missing).toEqual([])
    expect(bend.conductors.map(({ lifeReach }) => lifeReach)).toEqual(['beyond'])
    expect(verdict('fatigue-life')).toBe('fails')
    editBend(design, { insideRadiusMm: 1000 })
    expect(getFirstBend(design)).toMatchObject({ isLifeAtCap: true })
    expect(verdict('fatigue-life')).toBe('cannot-tell')
  })

  test('defaults that stand in for survival and slope are labelled; stated ones are not', () => {
    const design = readDemoDesign('skua-rev-b')
    expect(getFirstBend(design).cautions.join()).toContain('Weibull slope 2 is a default')
    design.brief.lifeWeibullSlope = 3
    design.brief.lifeSurvivalPct = 99
    expect(getFirstBend(design).cautions.join()).not.toContain('default')
    expect(getFirstBend(design).survivalPct).toBe(99)
    design.brief.lifeSurvivalPct = null
    expect(getFirstBend(design).cautions.join()).toContain('Survival of 99 % is a default')
  })
})

describe('life', () => {
  test('reversed bending has twice the strain range: half the strain is allowed', () => {
    const oneWay = getFirstBend(readDemoDesign('skua-rev-b'))
    const reversed = getFirstBend(editBend(readDemoDesign('skua-rev-b'), { motion: 'reversed' }))
    expect(reversed.peakStrainPct).toBe(oneWay.peakStrainPct)
    expect(reversed.allowablePct).toBeCloseTo((oneWay.allowablePct ?? 0) / 2, 12)
    expect(reversed.survivalLifeCycles).toBeLessThan((oneWay.survivalLifeCycles ?? 0) / 50)
  })

  test('at the smallest radius by life, life is what is required', () => {
    const { minRadiusByLifeMm } = getFirstBend(readDemoDesign('skua-rev-a-alternative'))
    const there = getFirstBend(
      editBend(readDemoDesign('skua-rev-a-alternative'), {
        insideRadiusMm: minRadiusByLifeMm ?? 0,
        radiusToleranceMm: 0,
      }),
    )
    expect((there.survivalLifeCycles ?? 0) / 2e6).toBeCloseTo(1, 6)
    expect((there.peakStrainPct ?? 0) / (there.allowablePct ?? 1)).toBeCloseTo(1, 8)
  })

  test('the curve rises with the radius, spans the bend and its required radius, and agrees with the bend', () => {
    const design = readDemoDesign('skua-rev-a-alternative')
    const bend = getFirstBend(design)
    expect(bend.lifeCurve.length).toBeGreaterThan(30)
    expect(bend.lifeCurve[0]?.insideRadiusMm).toBeLessThan(8)
    expect(bend.lifeCurve.at(-1)?.insideRadiusMm).toBeGreaterThan(bend.minRadiusByLifeMm ?? 0)
    for (let at = 1; at < bend.lifeCurve.length; at += 1) {
      const [previous, point] = [bend.lifeCurve[at - 1], bend.lifeCurve[at]]
      expect(point?.insideRadiusMm).toBeGreaterThan(previous?.insideRadiusMm ?? 0)
      expect(point?.medianLifeCycles).toBeGreaterThanOrEqual(previous?.medianLifeCycles ?? 0)
    }
    const middle = bend.lifeCurve[20]
    if (middle === undefined) throw new Error('no point')
    const there = getFirstBend(editBend(design, { insideRadiusMm: middle.insideRadiusMm }))
    expect((there.medianLifeCycles ?? 0) / middle.medianLifeCycles).toBeCloseTo(1, 6)
    expect((there.survivalLifeCycles ?? 0) / middle.survivalLifeCycles).toBeCloseTo(1, 6)
  })

  test('bends of one layer share a damage sum', () => {
    const design = readDemoDesign('skua-rev-b')
    const [hinge] = design.bends
    if (hinge === undefined) throw new Error('no bend')
    design.bends.push({ ...hinge, id: 'second-hinge', name: 'Second hinge', requiredCycles: 1e6 })
    const { damage } = evaluate(design)
    expect(damage).toHaveLength(1)
    const [layer] = damage
    expect(layer?.contributions.map(({ bendId }) => bendId)).toEqual(['hinge', 'second-hinge'])
    expect(layer?.damageSum).toBeCloseTo(1.5 * (layer?.contributions[0]?.damage ?? 0), 12)
  })
})

describe('conductors', () => {
  test('resistance, drop and capacity by hand', () => {
    const design = readDemoDesign('skua-rev-b')
    const drive = evaluate(design).conductors.find(({ conductorId }) => conductorId === 'drive')
    if (drive === undefined) throw new Error('no conductor')
    // 1.6 mm x 10.5 um is 26.04 square mil; covered on both sides (IPC-2221: k = 0.024).
    const areaSqMil = (1.6 * 0.0105) / 0.0254 ** 2
    expect(drive.capacityAmp).toBeCloseTo(0.024 * 20 ** 0.44 * areaSqMil ** 0.725, 9)
    const riseDegC = (0.5 / (0.024 * areaSqMil ** 0.725)) ** (1 / 0.44)
    expect(drive.riseDegC).toBeCloseTo(riseDegC, 9)
    expect(drive.temperatureDegC).toBeCloseTo(70 + riseDegC, 9)
    const ohm = ((0.017241379 * 0.096) / (1.6 * 0.0105)) * (1 + 0.00393 * (50 + riseDegC))
    expect(drive.resistanceOhm).toBeCloseTo(ohm, 9)
    expect(drive.dropVolt).toBeCloseTo(0.5 * ohm, 9)
  })

  test('what is not known is named by its path', () => {
    const design = readDemoDesign('skua-rev-b')
    design.brief.operatingMaxDegC = null
    const [first] = design.features.conductors
    if (first === undefined) throw new Error('no conductor')
    Object.assign(first, { currentAmp: null, lengthMm: null })
    const [result] = evaluate(design).conductors
    expect(result?.missing.map(({ path }) => path)).toEqual([
      ['features', 'conductors', 0, 'currentAmp'],
      ['features', 'conductors', 0, 'lengthMm'],
      ['brief', 'operatingMaxDegC'],
    ])
    expect(result).toMatchObject({ resistanceOhm: null, dropVolt: null, riseDegC: null, lightestFoilUm: null })
  })
})

describe('handbook and ratio', () => {
  test('the formula is worked with the finished section of the bend (IPC-2223, double-sided form from memory)', () => {
    const bend = getFirstBend(readDemoDesign('skua-rev-a'))
    // d = 25, c = 40.6; D on the inside = cover film 25 + adhesive 50 less (1 - 0.45) 40.6.
    const coverUm = 25 + 50 - 0.55 * 40.6
    expect(bend.handbook.minRadiusMm).toBeCloseTo((((25 / 2 + 40.6) * 99.7) / 0.3 - coverUm) / 1000, 9)
    expect(bend.handbook).toMatchObject({ deformationPct: 0.3, sourceKey: 'ipc2223Recalled' })
  })

  test('a fold of thin copper under a thick cover makes the formula negative: clamped, with a warning', () => {
    const design = makeDesign('single-sided')
    editBend(design, { use: 'fold-once' })
    const base = design.construction.layers.find(({ id }) => id === 'base')
    if (base === undefined) throw new Error('no base film')
    base.thicknessUm = 50
    const bend = getFirstBend(design)
    expect(bend.handbook).toMatchObject({ minRadiusMm: 0, clamped: true })
    expect(bend.handbook.warning).toContain('no floor')
    expect(bend.disagreement[0]).toContain('no floor')
  })

  test('the brief may choose another ratio table; one that does not exist is refused, and decides nothing in a stored design', () => {
    const design = editBend(readDemoDesign('pipit-rev-a'), {})
    design.brief.ratioTableKey = 'bend-radius-guide'
    expect(getFirstBend(design).ratio).toMatchObject({ tableKey: 'bend-radius-guide', required: 10 })
    design.brief.ratioTableKey = 'no-such-table'
    expect(parseDesign(design)).toMatchObject({
      ok: false,
      issues: [{ code: 'unknown-ratio-table', path: ['brief', 'ratioTableKey'] }],
    })
    const item = evaluate(design).items.find(({ itemId }) => itemId === 'radius-rules')
    expect(item?.verdict).toBe('not-computed')
    expect(item?.outcomes).toContainEqual(
      expect.objectContaining({ missing: [expect.objectContaining({ path: ['brief', 'ratioTableKey'] })] }),
    )
  })
})
