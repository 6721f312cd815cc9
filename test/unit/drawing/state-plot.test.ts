import { describe, expect, test } from 'vitest'
import { drawStatePlot, toSvg } from '@/lib/drawing'
import { type Bend, evaluate } from '@/lib/engine'
import { loadDesign, makeDocument, makeOptions } from './demo-design'

const { design } = loadDesign('skua-rev-b.json')
const frame = { ...makeOptions(design), document: makeDocument(), widthPx: 480, heightPx: 320 }

/** The hinge of Skua B with a second state or a load. */
function draw(change: Partial<Bend>) {
  const bends = design.bends.map((bend) => (bend.id === 'hinge' ? { ...bend, ...change } : bend))
  const bend = evaluate({ ...design, bends }).bends.find(({ bendId }) => bendId === 'hinge')
  if (bend === undefined) throw new Error('no hinge')
  const picture = drawStatePlot(bend, { ...frame, isReversed: change.motion === 'reversed' })
  return { bend, picture, svg: picture === null ? '' : toSvg(picture) }
}

/** Left and right end of each bar, as the axis places them. */
const listBars = (svg: string): { readonly left: number; readonly width: number }[] =>
  [...svg.matchAll(/<rect [^>]*>/g)].map(([rect]) => ({
    left: Number(/ x="([\d.]+)"/.exec(rect)?.[1]),
    width: Number(/ width="([\d.]+)"/.exec(rect)?.[1]),
  }))

describe('plot of states and loads', () => {
  test('is not drawn of a bend from flat that nothing else loads, nor of a motion that contradicts itself', () => {
    expect(draw({}).picture).toBeNull()
    expect(draw({ flexesFromRadiusMm: 5 }).picture).toBeNull()
    expect(draw({ flexesFromRadiusMm: 40, flexesFromAngleDeg: 30 }).picture).toBeNull()
  })

  test('of a motion between two ends has one bar for each layer, about the mean of the table', () => {
    const { bend, picture, svg } = draw({ flexesFromRadiusMm: 40 })
    expect(listBars(svg)).toHaveLength(bend.conductors.length)
    expect(picture?.description).toContain('range of one cycle about its mean')
    expect(picture?.description).toContain('inside radius of 40.0 mm')
    expect(picture?.table.columns.map(({ key }) => key)).toEqual(expect.arrayContaining(['cycle', 'mean']))
  })

  test('has longer bars the flatter the flatter end is', () => {
    const share = (change: Partial<Bend>) => {
      const { bend } = draw(change)
      return bend.conductors[0]?.cycleRangePct ?? 0
    }
    expect(share({ flexesFromRadiusMm: 200 })).toBeGreaterThan(share({ flexesFromRadiusMm: 40 }))
    expect(share({ flexesFromRadiusMm: 40 })).toBeGreaterThan(share({ flexesFromRadiusMm: 20 }))
  })

  test('of loads puts their parts end to end, and the ring where the table says together', () => {
    const { picture, svg } = draw({ pullN: 2, twistDeg: 3, twistLengthMm: 40 })
    const bars = listBars(svg).toSorted((a, b) => a.left - b.left)
    expect(bars).toHaveLength(3)
    for (const [at, { left }] of bars.entries()) {
      const before = bars[at - 1]
      if (before !== undefined) expect(left).toBeCloseTo(before.left + before.width, 0)
    }
    expect(svg.match(/<circle/g)).toHaveLength(1)
    expect(picture?.description).toMatch(/pale ones the pull, open ones the edge of the twist/)
  })

  test('says where an allowance or a fold lies off it rather than drawing it wrong', () => {
    const { picture } = draw({ flexesFromRadiusMm: 17.2, foldedToRadiusMm: 8 })
    expect(picture?.description).toContain('what is allowed lies farther out')
    expect(picture?.description).toContain('The fold before strained it by')
  })

  test.each([
    { flexesFromRadiusMm: 40 },
    { pullN: 2 },
    { motion: 'reversed', pullN: 2 },
    { foldedToRadiusMm: 8 },
  ] as const)('%o holds nothing that a page or a PDF cannot show', (change) => {
    expect(draw(change).svg).not.toMatch(/class=|<style|currentColor|var\(|NaN|undefined|Infinity|aria-/)
    expect(draw(change).picture?.table.rows.length).toBeGreaterThan(0)
  })
})
