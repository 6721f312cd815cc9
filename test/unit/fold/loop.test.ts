import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measureLoop } from '@/lib/fold/fit/measure-loop'
import { type FlatEnd, placeEnd } from '@/lib/fold/fit/place-end'
import type { FlatPart } from '@/lib/fold/kinematics/flat-part'
import { makeStripPart, type StripBend } from './make-part'

const T = 0.1
const WIDTH_MM = 8

function endOf(part: FlatPart): FlatEnd {
  const last = part.plates.at(-1)
  const xs = last?.solids[0]?.loops[0]?.map(([x]) => x) ?? [0]
  return { plateId: last?.id ?? '', at: [Math.max(...xs), WIDTH_MM / 2, 0], outwards: [1, 0, 0] }
}

function slackOf(part: FlatPart) {
  const end = endOf(part)
  const loop = measureLoop(part, 'p0', end)
  const at = placeEnd(part, 'p0', end)?.placed.at ?? [0, 0, 0]
  if (loop === null) throw new Error('nothing hangs')
  const bridgedMm = Math.hypot(at[0] - loop.from[0], at[1] - loop.from[1], at[2] - loop.from[2])
  return { lengthMm: loop.lengthMm, bridgedMm, slackMm: loop.lengthMm - bridgedMm }
}

describe('the slack of a loop', () => {
  it.each([30, 90, 150, 180])('is arc less chord for one bend of %s degrees (exact geometry)', (angleDeg) => {
    const [radiusMm, lastMm] = [5 + T / 2, 1e-6]
    const rad = (angleDeg * Math.PI) / 180
    const { lengthMm, slackMm } = slackOf(makeStripPart([{ angleDeg, insideMm: 5, plateMm: 10 }], { lastMm }))
    expect(lengthMm).toBeCloseTo(radiusMm * rad, 5)
    expect(slackMm).toBeCloseTo(radiusMm * rad - 2 * radiusMm * Math.sin(rad / 2), 5)
  })

  it('of a hairpin is two straight legs and half a turn, less the distance of the legs', () => {
    const part = makeStripPart(
      [
        { angleDeg: 0.001, insideMm: 5, plateMm: 10 },
        { angleDeg: 180, insideMm: 2, plateMm: 20 },
      ],
      { lastMm: 20 },
    )
    const { slackMm } = slackOf(part)
    const radiusMm = 2 + T / 2
    expect(slackMm).toBeCloseTo(40 + Math.PI * radiusMm - 2 * radiusMm, 1)
  })

  it('is never below 0 where an end lies where its bends bring it, and next to nothing in a flat part', () => {
    const bends = fc.array(
      fc.record({
        angleDeg: fc.double({ min: -170, max: 170, noNaN: true }).filter((deg) => Math.abs(deg) > 1),
        insideMm: fc.double({ min: 0.5, max: 6, noNaN: true }),
        plateMm: fc.double({ min: 2, max: 20, noNaN: true }),
      }),
      { minLength: 1, maxLength: 4 },
    )
    fc.assert(
      fc.property(bends, (made: StripBend[]) => {
        expect(slackOf(makeStripPart(made)).slackMm).toBeGreaterThan(-1e-9)
      }),
    )
    expect(slackOf(makeStripPart([{ angleDeg: 1e-6, insideMm: 5, plateMm: 10 }])).slackMm).toBeCloseTo(0, 9)
  })

  it('is told of no end on the area that stays', () => {
    const part = makeStripPart([{ angleDeg: 90, insideMm: 5, plateMm: 10 }])
    expect(measureLoop(part, 'p0', { ...endOf(part), plateId: 'p0' })).toBeNull()
  })
})
