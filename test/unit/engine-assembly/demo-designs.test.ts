import { describe, expect, test } from 'vitest'
import { type BendResult, type Evaluation, evaluate } from '@/lib/engine'
import { readDrawnDesign } from './demo-design-files'

const FACTS = { evaluatedOn: '2026-11-23', fabricatorsInvited: 2 }

function getBend(evaluation: Evaluation, bendId: string): BendResult {
  const bend = evaluation.bends.find((candidate) => candidate.bendId === bendId)
  if (bend === undefined) throw new Error(`no bend ${bendId}`)
  return bend
}

function getVerdict(evaluation: Evaluation, itemId: string) {
  const item = evaluation.items.find((candidate) => candidate.itemId === itemId)
  if (item === undefined) throw new Error(`no item ${itemId}`)
  return item.verdict
}

describe('Skua revision A', () => {
  const evaluation = evaluate(readDrawnDesign('skua-rev-a'), { facts: FACTS })
  const hinge = getBend(evaluation, 'hinge')

  test('its hinge carries two panel-plated layers of half-ounce foil', () => {
    const zone = evaluation.zones.find(({ zoneId }) => zoneId === 'hinge')
    const copper = zone?.layers.filter(({ copper: plated }) => plated !== null) ?? []
    expect(copper.map(({ copper: plated }) => plated)).toEqual([
      { foilUm: 17.1, platingUm: 25, lossUm: 1.5 },
      { foilUm: 17.1, platingUm: 25, lossUm: 1.5 },
    ])
    expect(copper[0]?.nominalUm).toBeCloseTo(40.6, 9)
  })

  test('strains its copper about 0.7 %, many times what the foil stands, and the plated copper breaks first', () => {
    expect(hinge.peakStrainPct).toBeGreaterThan(0.65)
    expect(hinge.peakStrainPct).toBeLessThan(0.75)
    for (const conductor of hinge.conductors) {
      expect(conductor.pastYield).toBe(true)
      expect(conductor.governingMaterial?.materialId).toBe('copper-plated')
      const [foil, plating] = [false, true].map((isPlating) =>
        conductor.parts.find((part) => part.isPlating === isPlating),
      )
      expect(foil?.allowablePct).toBeLessThan(0.1)
      expect(plating?.survivalLifeCycles).toBeLessThan(foil?.survivalLifeCycles ?? 0)
    }
  })

  test('lasts thousands of cycles where two million are required', () => {
    expect(hinge.requiredCycles).toBe(2e6)
    expect(hinge.survivalLifeCycles).toBeLessThan(5000)
    expect(hinge.medianLifeCycles).toBeLessThan(10_000)
    expect(getVerdict(evaluation, 'fatigue-life')).toBe('fails')
    expect(evaluation.damage.find(({ conductorLayerId }) => conductorLayerId === 'l3')?.damageSum).toBeGreaterThan(100)
  })

  test('nobody can tell a radius at which plated copper would last as long', () => {
    expect(hinge.minRadiusByStrainMm).toBeNull()
    expect(hinge.minRadiusByLifeMm).toBeNull()
    expect(hinge.handbook.minRadiusMm).toBeGreaterThan(8)
    expect(hinge.ratio).toMatchObject({ required: 150, tableKey: 'attributed-to-ipc-2223' })
  })

  test('has grown out of its connector by plating', () => {
    const finger = evaluation.zones.find(({ zoneId }) => zoneId === 'finger')
    expect(finger?.contact?.thicknessUm).toBeGreaterThan(330)
    expect((finger?.contact?.thicknessUm ?? 0) - 25).toBeLessThan(330)
    expect(getVerdict(evaluation, 'finger-thickness')).toBe('fails')
    expect(getVerdict(evaluation, 'plating-in-bend')).toBe('fails')
    // Half-ounce foil is ordinary.
    expect(getVerdict(evaluation, 'foil-weight')).toBe('meets')
  })
})

describe('Skua revision A with thinner, button-plated layers', () => {
  const evaluation = evaluate(readDrawnDesign('skua-rev-a-alternative'), { facts: FACTS })
  const hinge = getBend(evaluation, 'hinge')

  test('keeps plating out of the hinge, and still fails it', () => {
    expect(getVerdict(evaluation, 'plating-in-bend')).toBe('meets')
    const zone = evaluation.zones.find(({ zoneId }) => zoneId === 'hinge')
    expect(zone?.layers.every(({ copper }) => copper === null || copper.platingUm === 0)).toBe(true)
    expect(hinge.peakStrainPct).toBeLessThan(0.35)
    expect(hinge.peakStrainPct).toBeGreaterThan((hinge.allowablePct ?? 0) * 3)
    expect(getVerdict(evaluation, 'fatigue-life')).toBe('fails')
  })

  test('the same layers are plated on their pads alone, which the contacts of the finger end are', () => {
    const board = evaluation.zones.find(({ zoneId }) => zoneId === 'controller')
    expect(board?.layers.find(({ layerId }) => layerId === 'l2')?.copper?.platingUm).toBe(0)
    const finger = evaluation.zones.find(({ zoneId }) => zoneId === 'finger')
    expect(finger?.contact).toMatchObject({ platingUm: 25, finishUm: 4, missing: [] })
  })
})

describe('Skua revision B', () => {
  const evaluation = evaluate(readDrawnDesign('skua-rev-b'), { facts: FACTS })
  const hinge = getBend(evaluation, 'hinge')

  test('one 12 um rolled-annealed layer near the neutral axis passes the hinge at the worst corner of tolerances and constants', () => {
    expect(hinge.conductors).toHaveLength(1)
    const [conductor] = hinge.conductors
    const [leaf] = hinge.leaves
    const middleUm = ((conductor?.innerDepthUm ?? 0) + (conductor?.outerDepthUm ?? 0)) / 2
    expect(Math.abs(middleUm - (leaf?.neutralAxisDepthUm ?? 0))).toBeLessThan(1.5)
    expect(hinge.peakRangePct?.high).toBeLessThan(hinge.allowableRangePct?.low ?? 0)
    expect(getVerdict(evaluation, 'bend-strain')).toBe('meets')
  })

  test('reaches two million cycles at the survival percentile, at the worst corner of tolerances and constants', () => {
    expect(hinge.survivalPct).toBe(95)
    expect(hinge.survivalLifeCycles).toBeGreaterThan(2e6)
    expect(hinge.survivalLifeRangeCycles?.low).toBeGreaterThan(2e6)
    expect(getVerdict(evaluation, 'fatigue-life')).toBe('meets')
    expect(evaluation.damage[0]?.damageSum).toBeLessThan(1)
  })

  test('fits its connector over the whole tolerance range', () => {
    expect(getVerdict(evaluation, 'finger-thickness')).toBe('meets')
  })

  test('fails nothing; the foil comes near its yield point, which is said', () => {
    expect(evaluation.items.filter(({ verdict }) => verdict === 'fails')).toEqual([])
    expect(getVerdict(evaluation, 'copper-yield')).toBe('thin-margin')
  })
})

describe('Pipit revision A', () => {
  const evaluation = evaluate(readDrawnDesign('pipit-rev-a'), { facts: FACTS })

  test('has no concern, and lacks no input of the design', () => {
    expect(evaluation.items.filter(({ verdict }) => verdict === 'fails' || verdict === 'thin-margin')).toEqual([])
    for (const bend of evaluation.bends) expect(bend.missing).toEqual([])
    for (const conductor of evaluation.conductors) expect(conductor.missing).toEqual([])
    expect(getVerdict(evaluation, 'bend-strain')).toBe('meets')
  })
})
