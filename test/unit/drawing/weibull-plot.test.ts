import { describe, expect, test } from 'vitest'
import { drawWeibullPlot, toSvg } from '@/lib/drawing'
import { type FlexTestRow, fitFlexTestSets } from '@/lib/engine/flex-tests'
import { makeRows, WORKSPACE } from '../flex-tests/rows'
import { loadDesign, makeDocument, makeOptions } from './demo-design'

const { design } = loadDesign('skua-rev-a-alternative.json')
const frame = { ...makeOptions(design), document: makeDocument(), widthPx: 480, heightPx: 320 }

function draw(rows: readonly FlexTestRow[], unit: 'mm' | 'mil' = 'mm') {
  const [set] = fitFlexTestSets(rows, WORKSPACE)
  return set === undefined ? null : drawWeibullPlot(set, { ...frame, unit })
}

describe('Weibull plot', () => {
  const picture = draw(makeRows())
  const svg = picture === null ? '' : toSvg(picture)

  test('has a point for each failure and a mark for each survivor', () => {
    // Failures are filled circles of the line's colour, survivors hollow triangles.
    expect(svg.match(/<circle/g)).toHaveLength(9)
    expect(picture?.table.rows.filter(({ result }) => result === 'survived')).toHaveLength(3)
    expect(svg).not.toMatch(/class=|<style|currentColor|var\(|NaN|undefined|Infinity|aria-/)
  })

  test('says slope, bounds and counts in words, and ranks in the table', () => {
    expect(picture?.description).toContain('12 specimens, 9 failed')
    expect(picture?.description).toContain('Slope 1.9, 90 % bounds 1.14 to 2.88')
    // Benard: (1 - 0.3) / (12 + 0.4) of the first of twelve.
    expect(picture?.table.rows[0]).toMatchObject({ specimen: 'S1', rank: '5.6', result: 'failed' })
    expect(picture?.table.rows.at(-1)).toMatchObject({ rank: '', result: 'survived' })
  })

  test('a Weibull line is straight on it: its rise over log cycles is the slope', () => {
    const path = /stroke-width="1\.8"[^>]*><path d="([^"]*)"/.exec(svg)?.[1] ?? ''
    const points = [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map((each) => [Number(each[1]), Number(each[2])])
    expect(points.length).toBeGreaterThan(4)
    const [first, last] = [points[0] ?? [], points.at(-1) ?? []]
    const slope = ((last[1] ?? 0) - (first[1] ?? 0)) / ((last[0] ?? 0) - (first[0] ?? 1))
    for (const [x = 0, y = 0] of points) {
      expect(Math.abs(y - ((first[1] ?? 0) + slope * (x - (first[0] ?? 0))))).toBeLessThan(0.5)
    }
  })

  test('follows the unit of the reader, and draws each radius of a set', () => {
    const wide = makeRows({ insideRadiusMm: 8, specimen: '' }, [52_000, 61_000, 70_000, 88_000])
    const both = draw([...makeRows(), ...wide], 'mil')
    const text = both === null ? '' : toSvg(both)
    expect(text).toContain('R 157.48 mil')
    expect(text).toContain('R 314.961 mil')
  })

  test('is none where nothing can be fitted', () => {
    expect(draw(makeRows({ result: 'survived' }))).toBeNull()
  })
})
