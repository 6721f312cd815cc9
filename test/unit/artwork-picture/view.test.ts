import { describe, expect, it } from 'vitest'
import { viewAfterKey } from '@/app/_components/review/artwork-picture/keys'
import {
  fitBox,
  inOrderOfPaint,
  type LayerHead,
  panBy,
  pixelOf,
  placeOf,
  turnOver,
  viewAt,
  windowOf,
  zoomBy,
} from '@/lib/artwork-picture'

const SIZE = { width: 800, height: 480 }
const above = fitBox([10, -5, 110, 35], SIZE, false)
const below = turnOver(above)

describe('layers', () => {
  const head = (fileName: string, change: Partial<LayerHead>): { head: LayerHead } => ({
    head: { fileName, role: 'copper', side: null, copperPlace: null, leftOutReason: null, ...change },
  })
  const layers = [
    head('l1', { side: 'top', copperPlace: 0 }),
    head('l2', { side: 'bottom', copperPlace: 1 }),
    head('cover', { role: 'coverlay', side: 'top' }),
    head('stiffener', { role: 'stiffener', side: 'bottom' }),
    head('holes', { role: 'holes' }),
    head('drawing', { role: 'drawing' }),
  ]

  it('are painted from the farthest to the nearest, as they are seen from either side', () => {
    const names = (isFromBelow: boolean) => inOrderOfPaint(layers, isFromBelow).map((layer) => layer.head.fileName)
    expect(names(false)).toEqual(['drawing', 'stiffener', 'l2', 'l1', 'cover', 'holes'])
    expect(names(true)).toEqual(['drawing', 'cover', 'l1', 'l2', 'stiffener', 'holes'])
  })
})

describe('a view', () => {
  it('of all shows all, in the middle', () => {
    expect(above.middleMm).toEqual([60, 15])
    const [minX, minY, maxX, maxY] = windowOf(above, SIZE)
    expect(minX).toBeLessThan(10)
    expect(minY).toBeLessThan(-5)
    expect(maxX).toBeGreaterThan(110)
    expect(maxY).toBeGreaterThan(35)
  })

  it('finds a pixel of a place and the place of a pixel, from above and mirrored from below', () => {
    for (const view of [above, below]) {
      const place = placeOf(view, SIZE, [123, 77])
      const [x, y] = pixelOf(view, SIZE, place)
      expect(x).toBeCloseTo(123, 9)
      expect(y).toBeCloseTo(77, 9)
    }
    const [left] = pixelOf(above, SIZE, [10, 15])
    const [right] = pixelOf(below, SIZE, [10, 15])
    expect(left).toBeLessThan(400)
    expect(right).toBeCloseTo(800 - left, 9)
    // Up stays up.
    expect(pixelOf(below, SIZE, [10, 30])[1]).toBeLessThan(pixelOf(below, SIZE, [10, 0])[1])
  })

  it('keeps the place under the pointer while it is zoomed, and under the finger while it is moved', () => {
    for (const view of [above, below]) {
      const place = placeOf(view, SIZE, [300, 100])
      const [x, y] = pixelOf(zoomBy(view, 7, place), SIZE, place)
      expect([x, y].map((part) => Math.round(part * 1e6) / 1e6)).toEqual([300, 100])
      const [movedX, movedY] = pixelOf(panBy(view, 40, -25), SIZE, place)
      expect(movedX).toBeCloseTo(340, 9)
      expect(movedY).toBeCloseTo(75, 9)
    }
  })

  it('ends where a pixel is half a micrometre', () => {
    expect(zoomBy(above, 1e9, [0, 0]).mmPerPx).toBe(5e-4)
    expect(viewAt(above, [1, 2], 5, SIZE)).toEqual({ middleMm: [1, 2], mmPerPx: 5 / 480, isFromBelow: false })
  })

  it('follows the arrow keys to what lies in their direction, from either side', () => {
    for (const view of [above, below]) {
      const [x] = pixelOf(view, SIZE, viewAfterKey('ArrowRight', view, SIZE)?.middleMm ?? [0, 0])
      expect(x).toBeGreaterThan(SIZE.width / 2)
      const [, y] = pixelOf(view, SIZE, viewAfterKey('ArrowUp', view, SIZE)?.middleMm ?? [0, 0])
      expect(y).toBeLessThan(SIZE.height / 2)
    }
    expect(viewAfterKey('Tab', above, SIZE)).toBeNull()
    expect(viewAfterKey('f', above, SIZE)).toEqual(below)
  })
})
