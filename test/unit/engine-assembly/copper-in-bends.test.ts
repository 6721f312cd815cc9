import { describe, expect, test } from 'vitest'
import { type BendResult, type Design, evaluate, getOutcomeVerdict, type Outcome } from '@/lib/engine'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import { readDemoDesign } from './demo-design-files'

function change(name: Parameters<typeof readDemoDesign>[0], edit: (design: Design) => void): Design {
  const design = readDemoDesign(name)
  edit(design)
  return design
}

function look(
  design: Design,
  bendId: string,
  itemId: string,
): { bend: BendResult; outcomes: Outcome[]; verdicts: string[] } {
  const evaluation = evaluate(design)
  const bend = evaluation.bends.find((each) => each.bendId === bendId)
  const item = evaluation.items.find((each) => each.itemId === itemId)
  if (bend === undefined || item === undefined) throw new Error('no such bend or item')
  const outcomes = item.outcomes.filter(({ places }) => places.some(({ id }) => id === bendId))
  return { bend, outcomes, verdicts: outcomes.map(getOutcomeVerdict) }
}

describe('foil and plating', () => {
  const plate = (design: Design): void => {
    for (const layer of design.construction.layers) {
      if (layer.kind === 'conductor') {
        layer.plating = { process: 'panel', thicknessUm: 25, toleranceUm: 5, materialId: 'copper-plated' }
      }
    }
    for (const zone of design.construction.zones) for (const each of zone.presence) each.platedCopper = null
  }

  test('25 um plated on rolled foil that is flexed to install does not meet by the record of the foil', () => {
    const bendId = readDemoDesign('pipit-rev-a').bends[0]?.id ?? ''
    expect(look(readDemoDesign('pipit-rev-a'), bendId, 'bend-strain').verdicts).toEqual(['meets'])
    const { bend, verdicts } = look(change('pipit-rev-a', plate), bendId, 'bend-strain')
    expect(verdicts).toEqual(['not-computed'])
    expect(bend.missing.map(({ label }) => label).join()).toContain(
      'allowable strain of Plated copper for flexing to install',
    )
    const [conductor] = bend.conductors
    expect(conductor?.parts.map(({ isPlating }) => isPlating).sort()).toEqual([false, true])
    expect(conductor?.governingMaterial?.materialId).toBe('copper-plated')
  })

  test('plating lies on the face away from the base film of its foil', () => {
    const { bend } = look(readDemoDesign('skua-rev-a'), 'hinge', 'bend-strain')
    const orders = bend.conductors.map(({ parts }) => parts.map(({ isPlating }) => isPlating))
    // Two layers on one film: plated on the inside of the inner one, on the outside of the outer one.
    expect(orders).toEqual([
      [true, false],
      [false, true],
    ])
  })

  test('a plating whose material nobody stated is named', () => {
    const design = change('skua-rev-a', (d) => {
      for (const layer of d.construction.layers)
        if (layer.kind === 'conductor') layer.plating.materialId = 'no-such-copper'
    })
    const { bend, verdicts } = look(design, 'hinge', 'bend-strain')
    expect(bend.missing.map(({ path }) => path.slice(-2))).toContainEqual(['plating', 'materialId'])
    expect(verdicts).not.toContain('meets')
  })
})

describe('folds have a floor', () => {
  const fold = (insideRadiusMm: number) =>
    change('skua-rev-b', (d) => {
      for (const bend of d.bends) if (bend.id === 'fold') Object.assign(bend, { insideRadiusMm, radiusToleranceMm: 0 })
    })

  test('0.05 mm at 180 degrees is no fold that anybody can tell of, by its copper nor by its films', () => {
    for (const itemId of ['bend-strain', 'film-strain']) {
      const { verdicts } = look(fold(0.05), 'fold', itemId)
      expect(verdicts.length).toBeGreaterThan(0)
      expect(new Set(verdicts), itemId).toEqual(new Set(['cannot-tell']))
    }
  })

  test('a handbook formula that comes to less than 0 says nothing of the bend, and the ratio decides', () => {
    const design = findStartingConstruction('single-sided')?.makeDesign('Trial')
    if (design === undefined) throw new Error('no construction')
    for (const bend of design.bends) bend.use = 'fold-once'
    for (const layer of design.construction.layers) if (layer.id === 'base') layer.thicknessUm = 50
    const bendId = design.bends[0]?.id ?? ''
    const { bend, verdicts } = look(design, bendId, 'radius-rules')
    expect(bend.handbook.clamped).toBe(true)
    expect(verdicts).toEqual(['not-applicable', 'meets'])
  })

  test('the smallest radius is not below five times the thickness, and says that it is a floor', () => {
    const { bend } = look(fold(0.5), 'fold', 'bend-strain')
    expect(bend.minRadiusByStrainMm).toBeCloseTo((5 * bend.sectionThicknessUm) / 1000, 9)
    expect(bend.isMinRadiusFloor).toBe(true)
    expect(bend.modelLimits.map(({ kind }) => kind)).toEqual(['tight-radius'])
    expect(bend.cautions.join()).toContain('wrinkling')
    expect(bend.leaves[0]?.accuracyPct).toBeNull()
  })

  test('a dynamic bend that is far too tight fails, and still fails below the floor', () => {
    for (const insideRadiusMm of [3, 1, 0.3, 0.05]) {
      const design = change('skua-rev-b', (d) => {
        for (const bend of d.bends)
          if (bend.id === 'hinge') Object.assign(bend, { insideRadiusMm, radiusToleranceMm: 0 })
      })
      expect(look(design, 'hinge', 'fatigue-life').verdicts).toEqual(['fails'])
    }
  })
})

describe('hatched planes', () => {
  const hatch = (bars: { barMm: number; pitchMm: number; angleDeg: number } | null) =>
    change('skua-rev-b', (d) => {
      for (const layer of d.construction.layers) {
        if (layer.kind === 'conductor' && layer.id === 'l3')
          Object.assign(layer, { role: 'plane', planePattern: 'hatched' })
      }
      for (const zone of d.construction.zones) {
        for (const each of zone.presence) {
          if (each.layerId === 'l3') Object.assign(each, { hatch: bars, coverageFraction: null })
        }
      }
    })
  const bars = { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 }

  test('without bar and pitch nothing is computed, and they are named', () => {
    const { bend, verdicts } = look(hatch(null), 'fold', 'bend-strain')
    expect(bend.missing.map(({ label }) => label).join()).toContain('bar, pitch and angle of the hatched plane')
    expect(verdicts).not.toContain('meets')
  })

  test('bend by their bars: softer at 45 degrees than along them, and with the narrow strip in the range', () => {
    const across = look(hatch(bars), 'fold', 'bend-strain').bend
    const along = look(hatch({ ...bars, angleDeg: 0 }), 'fold', 'bend-strain').bend
    expect(across.leaves[0]?.rigidityNmm2PerMm).toBeLessThan(along.leaves[0]?.rigidityNmm2PerMm ?? 0)
    expect(across.modelLimits).toEqual([])
  })

  test('outside the tables nobody can tell', () => {
    for (const outside of [
      { ...bars, angleDeg: 20 },
      { ...bars, barMm: 0.05 },
      { ...bars, barMm: 0.4 },
    ]) {
      const { verdicts, bend } = look(hatch(outside), 'fold', 'bend-strain')
      expect(verdicts).toEqual(['cannot-tell'])
      expect(bend.modelLimits.map(({ kind }) => kind)).toEqual(['hatch'])
    }
  })
})
