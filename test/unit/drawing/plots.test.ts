import { describe, expect, test } from 'vitest'
import { drawLifePlot, drawStrainPlot, drawThicknessHistogram, toSvg } from '@/lib/drawing'
import { getConnectorThickness, simulateZoneThickness } from '@/lib/engine'
import { asComputed } from '@/lib/engine/units'
import { loadDesign, makeDocument, makeOptions } from './demo-design'

const { design, evaluation } = loadDesign('skua-rev-a-alternative.json')
const result = evaluation.bends.find((bend) => bend.use === 'dynamic')
const bend = design.bends.find((candidate) => candidate.id === result?.bendId)
const zone = evaluation.zones.find((candidate) => candidate.zoneId === result?.zoneId)
if (result === undefined || bend === undefined || zone === undefined) throw new Error('the demo design has a hinge')
const frame = { ...makeOptions(design), document: makeDocument(), widthPx: 480, heightPx: 320 }
const FORBIDDEN = /class=|<style|currentColor|var\(|NaN|undefined|Infinity|aria-/

describe('strain through the thickness', () => {
  const picture = drawStrainPlot(result, zone, bend.insideFace, frame)

  test('says the peak, the allowable and the neutral axis in words', () => {
    expect(picture.description).toContain(asComputed(result.peakStrainPct, 'strainPct'))
    expect(picture.description).toContain(asComputed(result.allowablePct, 'strainPct'))
    expect(picture.description).toContain('Neutral axis')
  })

  test('has a table row per conductor layer with both faces, innermost first', () => {
    expect(picture.table.rows.map((row) => row.layer)).toEqual(
      result.conductors.map((conductor) => expect.stringContaining(conductor.name)),
    )
    const first = result.conductors[0]
    expect(Number(picture.table.rows[0]?.inner?.replace('−', '-'))).toBeCloseTo(first?.innerStrainPct ?? Number.NaN, 3)
  })

  test('marks the neutral axis, both conductor layers and the allowed spans', () => {
    const svg = toSvg(picture)
    expect(svg).toContain('stroke-dasharray="12 3 2 3"')
    expect(svg).toContain('F1 (L2)')
    expect(svg).toContain('F2 (L3)')
    expect(svg.match(/stroke-dasharray="3 2"/g)).not.toBeNull()
    expect(svg).not.toMatch(FORBIDDEN)
  })

  test('a bend without an allowable still draws', () => {
    const bare = {
      ...result,
      allowablePct: null,
      conductors: result.conductors.map((conductor) => ({ ...conductor, allowablePct: null })),
    }
    expect(drawStrainPlot(bare, zone, bend.insideFace, frame).description).toContain('no allowable strain is known')
  })
})

describe('life over radius', () => {
  const picture = drawLifePlot(result, bend.insideRadiusMm, frame)

  test('marks the requirement, the radius it takes and this design', () => {
    const svg = picture === null ? '' : toSvg(picture)
    expect(svg).toContain('needed: 2 × 10⁶ cycles')
    expect(svg).toContain(`${asComputed(result.minRadiusByLifeMm, 'minRadiusMm')} needed`)
    expect(svg).toContain('this design')
    expect(svg).toContain(`${result.survivalPct} % survive`)
    expect(svg).not.toMatch(FORBIDDEN)
  })

  test('says that it is an order of magnitude', () => {
    expect(picture?.description).toContain('order of magnitude')
  })

  test('has a table row per computed radius', () => {
    expect(picture?.table.rows).toHaveLength(result.lifeCurve.length)
  })

  test('is absent where nothing was computed', () => {
    expect(drawLifePlot({ ...result, lifeCurve: [] }, bend.insideRadiusMm, frame)).toBeNull()
  })
})

describe('thickness histogram', () => {
  const finger = evaluation.zones.find((candidate) => candidate.kind === 'finger')
  if (finger === undefined) throw new Error('the demo design has a finger zone')
  const simulation = simulateZoneThickness(design, finger.zoneId, { seed: 7, draws: 20_000 })
  if (simulation === null) throw new Error('the finger zone has tolerances')
  const picture = drawThicknessHistogram(simulation, {
    ...frame,
    heightPx: 220,
    zoneName: finger.name,
    worstCaseUm: finger.worstCaseUm,
    windowUm: { minUm: 270, maxUm: 330 },
  })

  test('has a row per bin, and the shares add to 100 %', () => {
    const sum = picture.table.rows.reduce((total, row) => total + Number(row.percent), 0)
    // Each share is rounded to 0.01 %.
    expect(Math.abs(sum - 100)).toBeLessThan(0.005 * picture.table.rows.length + 1e-9)
  })

  test('marks the window of the connector', () => {
    expect(toSvg(picture)).toContain('connector, most')
    expect(toSvg(picture)).not.toMatch(FORBIDDEN)
  })

  test('the draws sit about the finished thickness and inside the worst case', () => {
    const { worstCaseUm } = getConnectorThickness(finger)
    // 20,000 draws of about 5 um spread put the mean within 0.2 um.
    expect(Math.abs(simulation.meanUm - (worstCaseUm.low + worstCaseUm.high) / 2)).toBeLessThan(0.2)
    expect(simulation.percentilesUm.p0135).toBeGreaterThan(worstCaseUm.low)
    expect(simulation.percentilesUm.p99865).toBeLessThan(worstCaseUm.high)
  })
})
