import { describe, expect, it } from 'vitest'
import { choosePaths, type DrawnLayer, type LayerHead, readPicture, writePicture } from '@/lib/artwork-picture'

const HEAD: LayerHead = { fileName: 'l1.gbr', role: 'copper', side: 'top', copperPlace: 0, leftOutReason: null }

/** A million lands of 0.2 mm (every tenth 0.02 mm) on a grid of 0.5 mm: 1000 tiles of 1000. Made as arrays, as the reader would. */
const STEP = 5000
function makeLands(): DrawnLayer {
  const [tiles, perTile, corners] = [1000, 1000, 4]
  const pieces = tiles * perTile
  const layer: DrawnLayer = {
    head: HEAD,
    corners: new Int32Array(2 * corners * pieces),
    pathStarts: Uint32Array.from({ length: pieces + 1 }, (_, at) => corners * at),
    pathSizes: new Uint32Array(pieces),
    pieceStarts: Uint32Array.from({ length: pieces + 1 }, (_, at) => at),
    tileStarts: Uint32Array.from({ length: tiles + 1 }, (_, at) => perTile * at),
    tileBoxes: new Int32Array(4 * tiles),
  }
  for (let tile = 0; tile < tiles; tile += 1) {
    // A tile is 25 by 40 lands; 40 by 25 tiles are 1000 by 1000 lands.
    const [left, low] = [(tile % 40) * 25, Math.floor(tile / 40) * 40]
    layer.tileBoxes.set([left * STEP, low * STEP, (left + 25) * STEP, (low + 40) * STEP], 4 * tile)
    for (let at = 0; at < perTile; at += 1) {
      const piece = tile * perTile + at
      const half = at < 900 ? 1000 : 100
      const [x, y] = [(left + (at % 25)) * STEP + 1000, (low + Math.floor(at / 25)) * STEP + 1000]
      layer.corners.set([x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half], 8 * piece)
      layer.pathSizes[piece] = 2 * half
    }
  }
  return layer
}

describe('what of a million objects is drawn', () => {
  const lands = makeLands()
  const all = [0, 0, 1000 * STEP, 1000 * STEP] as const

  it('is nothing where all of it is smaller than a pixel, and it is said how much that is', () => {
    expect(choosePaths(lands, all, 2001)).toEqual({ runs: [], pathCount: 0, triangleCount: 0, tooSmallCount: 1e6 })
  })

  it('is what reaches a pixel where all of it is in sight', () => {
    const { pathCount, triangleCount, tooSmallCount } = choosePaths(lands, all, 2000)
    expect({ pathCount, triangleCount, tooSmallCount }).toEqual({
      pathCount: 900_000,
      triangleCount: 1_800_000,
      tooSmallCount: 100_000,
    })
  })

  it('is what lies in the tiles in sight where little is in sight: four tiles at most for a window smaller than one', () => {
    const window = [100 * STEP - 3000, 80 * STEP - 3000, 100 * STEP + 3000, 80 * STEP + 3000] as const
    const chosen = choosePaths(lands, window, 10)
    expect(chosen.pathCount).toBe(4000)
    expect(chosen.triangleCount).toBe(8000)
  })

  it('leaves nothing out that lies in the window and reaches a pixel, wherever the window is', () => {
    for (let at = 0; at < 12; at += 1) {
      const [x, y, side, pixel] = [317_000 * at, 291_000 * at, 40_000 + 9_000 * at, at % 2 === 0 ? 150 : 1500]
      const window = [x, y, x + side, y + side] as const
      const { runs } = choosePaths(lands, window, pixel)
      const isDrawn = new Uint8Array(1e6)
      for (let run = 0; run < runs.length; run += 2) isDrawn.fill(1, runs[run], runs[run + 1])
      let missing = 0
      for (let piece = 0; piece < 1e6; piece += 1) {
        const [minX = 0, minY = 0, maxX = 0, , , maxY = 0] = lands.corners.subarray(8 * piece, 8 * piece + 8)
        const isSeen = maxX >= window[0] && minX <= window[2] && maxY >= window[1] && minY <= window[3]
        if (isSeen && (lands.pathSizes[piece] ?? 0) >= pixel && isDrawn[piece] === 0) missing += 1
      }
      expect(missing).toBe(0)
    }
  })
})

describe('a piece with holes', () => {
  const square = (x: number, y: number, side: number) => [x, y, x + side, y, x + side, y + side, x, y + side]
  // 1 mm with holes of 0.3 and 0.01 mm, and a land of 0.05 mm beside it: in nm.
  const [layer] = readPicture(
    writePicture([
      {
        head: HEAD,
        tiles: [
          [
            [square(2_000_000, 0, 50_000)],
            [square(0, 0, 1_000_000), square(800_000, 800_000, 10_000), square(100_000, 100_000, 300_000)],
          ],
        ],
      },
    ]),
  ) as [DrawnLayer]

  it('stands first by its size, its holes by theirs', () => {
    expect([...layer.pathSizes]).toEqual([10_000, 3000, 100, 500])
    expect([...layer.pieceStarts]).toEqual([0, 3, 4])
    expect([...layer.tileBoxes]).toEqual([0, 0, 20_500, 10_000])
  })

  it('is drawn with the holes that reach a pixel', () => {
    const window = [0, 0, 30_000, 30_000] as const
    expect(choosePaths(layer, window, 100)).toEqual({ runs: [0, 4], pathCount: 4, triangleCount: 8, tooSmallCount: 0 })
    expect(choosePaths(layer, window, 200)).toEqual({
      runs: [0, 2, 3, 4],
      pathCount: 3,
      triangleCount: 6,
      tooSmallCount: 1,
    })
    expect(choosePaths(layer, window, 3001)).toEqual({ runs: [0, 1], pathCount: 1, triangleCount: 2, tooSmallCount: 3 })
  })
})
