import { describe, expect, it } from 'vitest'
import { drawOutline, drawPanel, PRINT_PALETTE, toSvg } from '@/lib/drawing'
import { nestPart, type PanelFormat } from '@/lib/fabrication'
import { U_SHAPE } from '../fabrication/panel/shapes'

const FORMAT: PanelFormat = {
  id: 'small',
  name: 'Small panel <A>',
  widthMm: 300,
  heightMm: 400,
  marginLeftMm: 10,
  marginRightMm: 20,
  marginTopMm: 5,
  marginBottomMm: 15,
  spacingMm: 2,
  allowedRotationsDeg: [0, 180],
  foilRollingDirection: 'along-height',
  note: '',
}

describe('panel picture', () => {
  const nesting = nestPart({ outline: U_SHAPE, rollingDirection: null }, FORMAT)
  const picture = drawPanel({ outline: U_SHAPE }, nesting, FORMAT, { palette: PRINT_PALETTE, widthPx: 420 })

  it('draws every part once and within the margins, and writes each into the table', () => {
    const parts = picture.nodes.filter(({ tag }) => tag === 'polygon')
    expect(parts).toHaveLength(nesting.count)
    expect(picture.table.rows).toHaveLength(nesting.count)
    const [panel, usable] = picture.nodes.filter(({ tag }) => tag === 'rect').map(({ attributes }) => attributes)
    const scale = Number(panel?.width) / FORMAT.widthMm
    expect(Number(usable?.width) / scale).toBeCloseTo(270, 1)
    for (const { attributes } of parts) {
      for (const pair of String(attributes.points).split(' ')) {
        const [x, y] = pair.split(',').map(Number)
        expect(x).toBeGreaterThanOrEqual(Number(usable?.x) - 0.02)
        expect(x).toBeLessThanOrEqual(Number(usable?.x) + Number(usable?.width) + 0.02)
        expect(y).toBeGreaterThanOrEqual(Number(usable?.y) - 0.02)
        expect(y).toBeLessThanOrEqual(Number(usable?.y) + Number(usable?.height) + 0.02)
      }
    }
  })

  it('draws an array as its frame with each of its parts in it, turned with it, and counts arrays in the table', () => {
    const part = U_SHAPE
    const [w, h] = [Math.max(...part.map(([x]) => x)), Math.max(...part.map(([, y]) => y))]
    const at = (dx: number) => part.map(([x, y]): readonly [number, number] => [x + 5000 + dx, y + 5000])
    const array = {
      outline: [
        [0, 0],
        [2 * w + 12_000, 0],
        [2 * w + 12_000, h + 10_000],
        [0, h + 10_000],
      ] as [number, number][],
      array: { part, parts: [at(0), at(w + 2000)] },
    }
    const laid = nestPart({ ...array, rollingDirection: null }, { ...FORMAT, allowedRotationsDeg: [180] })
    const drawn = drawPanel(array, laid, FORMAT, { palette: PRINT_PALETTE, widthPx: 420 })
    const polygons = drawn.nodes.filter(({ tag }) => tag === 'polygon')
    expect(laid.count).toBe(2 * laid.placements.length)
    expect(laid.placements.length).toBeGreaterThan(0)
    expect(polygons).toHaveLength(3 * laid.placements.length)
    expect(drawn.table.rows).toHaveLength(laid.placements.length)
    expect(drawn.table.columns[0]?.label).toBe('Array')
    const boxOf = (at: number) => {
      const points = String(polygons[at]?.attributes.points).split(' ')
      const all = points.map((pair) => pair.split(',').map(Number))
      const [xs, ys] = [all.map(([x = 0]) => x), all.map(([, y = 0]) => y)]
      return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const
    }
    const [frame, ...inside] = [0, 1, 2].map(boxOf)
    for (const [left, right, top, bottom] of inside) {
      expect(left).toBeGreaterThan(frame?.[0] ?? 0)
      expect(right).toBeLessThan(frame?.[1] ?? 0)
      expect(top).toBeGreaterThan(frame?.[2] ?? 0)
      expect(bottom).toBeLessThan(frame?.[3] ?? 0)
    }
    // Turned by half, the part that lay left lies right.
    expect(inside[0]?.[0]).toBeGreaterThan(inside[1]?.[0] ?? Number.POSITIVE_INFINITY)
  })

  it('says the numbers in words, shows the grain, and escapes names', () => {
    expect(picture.description).toContain(`${nesting.count} parts, `)
    const svg = toSvg(picture)
    expect(svg).toContain('foil rolled this way')
    expect(svg).toContain('Small panel &lt;A&gt;')
  })
})

describe('outline picture', () => {
  it('numbers the corners and says the size', () => {
    const picture = drawOutline(
      {
        verticesMm: [
          [0, 0],
          [80, 0],
          [80, 20.5],
          [0, 20.5],
        ],
        rollingDirection: 'along-x',
      },
      { palette: PRINT_PALETTE, widthPx: 400 },
    )
    expect(picture.description).toBe('4 corners, 80 × 20.5 mm; the foil’s rolling direction lies along x.')
    expect(picture.table.rows).toHaveLength(4)
    expect(picture.nodes.filter(({ tag }) => tag === 'circle')).toHaveLength(4)
  })
})
