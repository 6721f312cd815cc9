import { describe, expect, it } from 'vitest'
import { checkFolded } from '@/lib/fold/clash/check-folded'
import { sweepFold } from '@/lib/fold/clash/sweep-fold'
import type { FlatPart } from '@/lib/fold/kinematics/flat-part'
import { foldPart } from '@/lib/fold/kinematics/fold-part'
import { findFoldOrder } from '@/lib/fold/order/find-fold-order'
import { carry, makeStripPart, rectangle } from './make-part'

describe('clashes along the way', () => {
  const oneFold = makeStripPart([{ angleDeg: 180, insideMm: 1, plateMm: 20 }])

  it('a thin bar that the leaf meets only on its way is found, and the end state alone would not show it', () => {
    for (const thicknessMm of [0.5, 0.05, 0.005]) {
      const bar = carry('bar', 'p0', rectangle(14, 1, thicknessMm, 6), 5, 5 + thicknessMm)
      expect(checkFolded(oneFold, [bar], foldPart(oneFold, 'p0'), 0.02).clashes).toEqual([])
      const [met] = sweepFold(oneFold, [bar], 'p0', [['b0']], 0.02)
      expect([met?.clash.bodyIds.join(' '), met?.step]).toEqual(['p1 bar', 0])
      expect(met?.share).toBeGreaterThan(0.5)
      expect(met?.share).toBeLessThan(1)
    }
  })

  it('a bar just beyond the reach of the leaf is not met', () => {
    // The leaf is 10 mm long behind a band of 3.3 mm: nothing of it comes further than that from the border.
    const bar = carry('bar', 'p0', rectangle(2, 1, 0.5, 6), 13, 13.5)
    expect(sweepFold(oneFold, [bar], 'p0', [['b0']], 0.02)).toEqual([])
  })

  it('a plain fold meets nothing on its way, whatever the angle', () => {
    for (const angleDeg of [10, 90, 179, 180, -180]) {
      const part = makeStripPart([{ angleDeg, insideMm: 0.3, plateMm: 12 }])
      expect(sweepFold(part, [], 'p0', [['b0']], 0.2), `${angleDeg} degrees`).toEqual([])
    }
  })

  it('a spiral winds in one order only: the inner leaf first', () => {
    // Two half turns the same way; the outer bend is wide enough to take the inner fold in.
    const part: FlatPart = makeStripPart(
      [
        { angleDeg: 180, insideMm: 2, plateMm: 20 },
        { angleDeg: 180, insideMm: 0.5, plateMm: 10 },
      ],
      { lastMm: 6 },
    )
    const innerFirst = [['b1'], ['b0']]
    expect(sweepFold(part, [], 'p0', innerFirst, 0.1)).toEqual([])
    expect(sweepFold(part, [], 'p0', [['b0'], ['b1']], 0.1)).not.toEqual([])
    expect(findFoldOrder(part, [], 'p0', [['b0'], ['b1']], 0.1)).toEqual({ kind: 'found', order: innerFirst })
  })

  it('where no order works, it says so with the clash', () => {
    const part = makeStripPart([{ angleDeg: 180, insideMm: 0.5, plateMm: 20 }])
    const wall = carry('wall', 'p0', rectangle(14, 1, 2, 6), 0.05, 3)
    const found = findFoldOrder(part, [wall], 'p0', [['b0']], 0.1)
    expect(found.kind).toBe('none')
    expect(found.kind === 'none' ? found.clashes.map(({ clash }) => clash.bodyIds.join(' ')) : []).toEqual(['p1 wall'])
  })
})

describe('what a coarse look at a bend cannot tell', () => {
  // Inside face of the bend at 12 mm: strips of 15 degrees stand up to 0.1 mm off the arc.
  const part = makeStripPart([{ angleDeg: 180, insideMm: 12, plateMm: 40 }], { lastMm: 60 })
  const HALF_MM = 0.01
  /** A thin bar that hangs over into the bend, by that much off the middle of a strip of the folded arc, whose centre is at (40, 12.05). */
  const barAt = (gapMm: number) => {
    const turnRad = (82.5 * Math.PI) / 180
    const outMm = 12 - gapMm - Math.SQRT2 * HALF_MM
    const [x, z] = [40 + outMm * Math.sin(turnRad), 12.05 - outMm * Math.cos(turnRad)]
    return carry('bar', 'p0', rectangle(x - HALF_MM, 1, 2 * HALF_MM, 6), z - HALF_MM, z + HALF_MM)
  }

  it('a gap within the sag of a strip is told from a clash', () => {
    for (const [gapMm, kinds] of [
      [0.15, ['near']],
      [0.22, []],
      [0.5, []],
    ] as const) {
      const ends = checkFolded(part, [barAt(gapMm)], foldPart(part, 'p0'), 0.2)
      expect(
        ends.clashes.map(({ kind }) => kind),
        `${gapMm} mm folded`,
      ).toEqual(kinds)
      const met = sweepFold(part, [barAt(gapMm)], 'p0', [['b0']], 0.2)
      expect(
        met.map(({ clash }) => clash.kind),
        `${gapMm} mm on the way`,
      ).toEqual(kinds)
    }
  })
})

describe('orders of bends', () => {
  const block = (thick: number) => carry('block', 'p0', rectangle(14, 1, 2, 6), 0.05, 0.05 + thick)

  it('works, certainly fails, or cannot be told: three answers', () => {
    // Leaves of the bend lie 2 mm apart; a block as high as the limit lies between the bounds of what is looked at.
    const part = makeStripPart([{ angleDeg: 180, insideMm: 1, plateMm: 20 }])
    const orderOf = (highMm: number, clearanceMm = 0.2) =>
      findFoldOrder(part, [block(highMm)], 'p0', [['b0']], clearanceMm)
    expect(orderOf(1).kind).toBe('found')
    expect(orderOf(3)).toMatchObject({
      kind: 'none',
      clashes: [{ clash: { kind: expect.not.stringMatching('cannot-tell') } }],
    })
  })

  it('a step that nobody can tell is neither a clash nor a way: another order that is clear is preferred to it', () => {
    const open = findFoldOrder(makeStripPart([{ angleDeg: 90, insideMm: 1, plateMm: 20 }]), [], 'p0', [['b0']], 0.2)
    expect(open).toEqual({ kind: 'found', order: [['b0']] })
  })
})
