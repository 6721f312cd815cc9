import { describe, expect, it } from 'vitest'
import { chainStrokes, drawDxf, readDxf } from '@/lib/drawing-files'
import { bytes, dxf, type Groups, line } from './dxf-text'

function chain(entities: Groups, matchMm = 0.01) {
  const read = readDxf(bytes(dxf({ entities })))
  if (!read.ok) throw new Error(read.reason)
  const { chains, doubles } = chainStrokes(drawDxf(read.file, 1, 0.001).strokes, matchMm)
  return {
    chains: chains.map(({ isClosed, pieces }) => `${isClosed ? 'closed' : 'open'} ${pieces.length}`),
    doubles,
    all: chains,
  }
}

describe('loose pieces', () => {
  const square = [...line(0, 0, 10, 0), ...line(10, 10, 10, 0), ...line(0, 10, 10, 10), ...line(0, 10, 0, 0)]

  it('are chained into loops whatever their order and direction', () => {
    expect(chain(square).chains).toEqual(['closed 4'])
    const [loop] = chain(square).all
    loop?.pieces.forEach((piece, at) => {
      expect(piece.to).toEqual(loop.pieces[(at + 1) % 4]?.from)
    })
  })

  it('close gaps within the stated distance, with their width, and no wider ones', () => {
    const gap = [...line(0, 0, 10, 0.004), ...line(10, 0, 10, 10), ...line(10, 10, 0, 10), ...line(0, 10, 0, 0)]
    expect(chain(gap).all[0]?.widestGapMm).toBeCloseTo(0.004, 9)
    expect(chain(gap).chains).toEqual(['closed 4'])
    expect(chain(gap, 0.001).chains).toEqual(['open 4'])
  })

  it('drawn twice, there or back, count once', () => {
    const twice = [...square, ...line(10, 0, 0, 0), ...line(0, 0, 10, 0)]
    expect(chain(twice)).toMatchObject({ chains: ['closed 4'], doubles: 2 })
  })

  it('that end elsewhere stay open', () => {
    expect(chain([...line(0, 0, 1, 0), ...line(1, 0, 2, 5), ...line(9, 9, 8, 8)]).chains).toEqual(['open 2', 'open 1'])
  })

  it('of many in one place do not take for ever', () => {
    const star = Array.from({ length: 5000 }, (_, at) => line(0, 0, 1 + at, 1)).flat()
    expect(chain(star).all.length).toBeGreaterThan(2000)
  })
})
