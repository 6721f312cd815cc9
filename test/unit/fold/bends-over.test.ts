import { describe, expect, it } from 'vitest'
import { listBandsOver } from '@/lib/fold/clash/bends-over'
import type { FlatBand, FlatPart, FlatPlate } from '@/lib/fold/kinematics/flat-part'
import { foldPart } from '@/lib/fold/kinematics/fold-part'

const WIDTH_MM = 10
const THICK_MM = 0.1

const box = (from: number, to: number, low = 0, high = WIDTH_MM) =>
  [
    [from, low],
    [to, low],
    [to, high],
    [from, high],
  ] as const

/** A strip along x: plates of the given lengths, and between them bends of a radius of the middle surface and an angle. */
function makeStrip(
  plates: readonly number[],
  bends: readonly { readonly radiusMm: number; readonly angleDeg: number }[],
): FlatPart {
  let at = 0
  const list: FlatPlate[] = []
  const bands: FlatBand[] = []
  plates.forEach((mm, index) => {
    const heights = { bottomMm: 0, topMm: THICK_MM }
    list.push({ id: `p${index}`, solids: [{ id: `s${index}`, loops: [box(at, at + mm)], ...heights }] })
    at += mm
    const bend = bends[index]
    if (bend === undefined) return
    const lengthMm = (bend.radiusMm * Math.abs(bend.angleDeg) * Math.PI) / 180
    bands.push({
      id: `b${index}`,
      fromPlateId: `p${index}`,
      toPlateId: `p${index + 1}`,
      start: [at, 0],
      across: [1, 0],
      lengthMm,
      angleDeg: bend.angleDeg,
      neutralMm: THICK_MM / 2,
      loops: [box(at, at + lengthMm)],
      ...heights,
    })
    at += lengthMm
  })
  return { plates: list, bands }
}

const over = (part: FlatPart, fixed = 'p0') =>
  listBandsOver(part, foldPart(part, fixed)).map(({ overId, underId, gapMm }) => ({ overId, underId, gapMm }))

describe('bends that lie over each other', () => {
  // Rolled up: two half turns back round the first two, each pair about one centre. Radii of the middle surface 1, 1, 1.3, 1.3 mm.
  const rolled = makeStrip(
    [3, 5, 5, 3],
    [
      { radiusMm: 1, angleDeg: 180 },
      { radiusMm: 1.15, angleDeg: 180 },
      { radiusMm: 1.3, angleDeg: 180 },
    ],
  )

  it('in a roll the third half turn lies over the first, by the difference of their faces in closed form', () => {
    const [found, ...others] = over(rolled)
    expect(others).toEqual([])
    expect([found?.overId, found?.underId]).toEqual(['b2', 'b0'])
    // Its centre lies (1.15 - 1) + (1.15 - 1.3) off that of the first across the leaves: 0; along the leaves both are 5 mm from the second.
    expect(found?.gapMm).toBeCloseTo(1.3 - 1 - THICK_MM, 9)
  })

  it('is the same seen from another plate, and with every bend the other way', () => {
    expect(over(rolled, 'p2')[0]?.gapMm).toBeCloseTo(0.2, 9)
    const turned = { ...rolled, bands: rolled.bands.map((band) => ({ ...band, angleDeg: -band.angleDeg })) }
    expect(over(turned)[0]?.gapMm).toBeCloseTo(0.2, 9)
  })

  it('the bends of a concertina lie beside each other, and none over another', () => {
    const bends = [1, -1, 1, -1].map((sign) => ({ radiusMm: 1, angleDeg: 180 * sign }))
    expect(over(makeStrip([5, 5, 5, 5, 5], bends))).toEqual([])
  })

  it('a wide loop round a tight bend is too far off to press on it', () => {
    const wide = makeStrip(
      [3, 5, 5, 3],
      [
        { radiusMm: 0.5, angleDeg: 180 },
        { radiusMm: 1.5, angleDeg: 180 },
        { radiusMm: 2.5, angleDeg: 180 },
      ],
    )
    expect(over(wide)).toEqual([])
  })

  it('what lies flat lies over nothing', () => {
    const flat = new Map(rolled.bands.map(({ id }) => [id, 0]))
    expect(listBandsOver(rolled, foldPart(rolled, 'p0', flat))).toEqual([])
  })
})
