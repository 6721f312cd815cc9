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
  const picture = drawPanel(U_SHAPE, nesting, FORMAT, { palette: PRINT_PALETTE, widthPx: 420 })

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
