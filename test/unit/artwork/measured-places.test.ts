import { describe, expect, test } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import { findItem } from '@/lib/engine/catalogue'
import { type Drawn, drawGerber } from './draw-set'
import { AXIS_MM, hatched, stated, withLayer } from './hatched-demo'
import { at, design, failures, measure, measuredBy, readFacts, straight } from './on-demo'

type Point = readonly [number, number]

const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]
const area = (...corners: Parameters<typeof box>): Drawn => ({ area: box(...corners) })
/** Along the first bend's axis by share, across it in mm. */
const acrossBend = (from: number, to: number, widthMm: number): Drawn => ({
  area: [at(from, -widthMm), at(to, -widthMm), at(to, widthMm), at(from, widthMm)],
})
const cover = (objects: readonly Drawn[]) => [drawGerber('part-coverlay-top.gbr', 'Other,User', objects)]
const stiffener = (objects: readonly Drawn[]) => drawGerber('part-stiffener-bottom.gbr', 'Other,User', objects)

test('whatever is measured in artwork rests on it: an answer reopens when files change', () => {
  const found = measure(
    [
      straight,
      ...hatched(0.2, 0.05),
      { pad: [12, 20], sizeMm: 0.7 },
      {
        stroke: [
          [12, 20],
          [12, 24],
        ],
        widthMm: 0.2,
      },
    ],
    [],
    [...cover([area(10, 18, 14, 22), area(14.2, 18, 16, 22)]), stiffener([area(0, 0, 24, 45)])],
  )
  const measured = found.items.filter(({ itemId }) => measuredBy(found, itemId).length > 0).map(({ itemId }) => itemId)
  expect(measured.length).toBeGreaterThan(8)
  for (const id of measured) expect(findItem(id)?.restsOn, id).toContain('artwork')
})

describe('plane-in-bend', () => {
  const of = (changed: Design, top: readonly Drawn[]) => {
    const evaluation = evaluate(changed, { facts: readFacts(top, [], [], changed) })
    const id = design.bends[0]?.use === 'fold-once' ? 'plane-in-fold' : 'plane-in-bend'
    return (
      evaluation.items
        .find(({ itemId }) => itemId === id)
        ?.outcomes.filter(({ summary }) => summary.includes('layer-1.gbr') || summary.includes('2 mm wide')) ?? []
    )
  }
  const plane = withLayer({ role: 'plane', planePattern: null })
  test('is decided by the drawn plane where nobody stated its pattern', () => {
    expect(of(plane, [acrossBend(0, 1, 6)])).toMatchObject([{ verdict: 'fails' }])
    const [hatch] = of(plane, hatched(0.2, 0.05))
    expect(hatch).toMatchObject({ verdict: 'meets' })
    expect(hatch?.summary).toMatch(/hatched with bars of 0\.2 mm at a pitch of [\d.]+ mm, at 45°/)
    expect(of(plane, [straight])).toEqual([])
  })
  test('fails for a plane that is said to be hatched and is solid over half of the bend, and cannot be told for less', () => {
    const said = stated(0.2, 0.5)
    expect(of(said, [acrossBend(0.1, 0.8, 6)])).toMatchObject([{ verdict: 'fails' }])
    expect(of(said, [...hatched(0.2, 0.05), acrossBend(0.1, 0.35, 6)])[0]).toMatchObject({ kind: 'cannot-tell' })
    expect(of(said, hatched(0.2, 0.05))[0]).toMatchObject({ verdict: 'meets' })
    // Strips of a split plane may be wide.
    expect(of(withLayer({ role: 'plane', planePattern: 'split' }), [acrossBend(0.1, 0.8, 6)])).toMatchObject([
      { verdict: 'meets' },
    ])
    // A layer of signals has no plane.
    expect(of(withLayer({ role: 'signal', planePattern: 'none' }), [acrossBend(0, 1, 6)])).toEqual([])
  })
})

describe('a hatch that is stated', () => {
  const step = 0.1
  const pitchMm = (AXIS_MM * step) / Math.SQRT2
  const says = (changed: Design, top: readonly Drawn[]) =>
    evaluate(changed, { facts: readFacts(top, [], [], changed) })
      .items.find(({ itemId }) => itemId === 'artwork-agreement')
      ?.outcomes.flatMap(({ summary }) => (summary.startsWith('Hatch of') ? [summary] : [])) ?? []

  test('agrees with the drawn one, or contradicts it by bar, by pitch or by being none', () => {
    const drawn = hatched(0.2, step)
    expect(says(stated(0.2, Math.round(pitchMm * 1000) / 1000), drawn)).toEqual([])
    expect(says(stated(0.25, pitchMm), drawn)[0]).toMatch(/bars of 0\.2 mm .* in layer-1\.gbr, bars of 0\.25 mm/)
    expect(says(stated(0.2, pitchMm * 1.2), drawn)).toHaveLength(1)
    expect(says(withLayer({ role: 'plane', planePattern: 'solid' }), drawn)[0]).toContain('a solid plane')
    expect(says(withLayer({ role: 'plane', planePattern: null }), drawn)).toEqual([])
  })
})

test('width-step fails at its place for strokes on film that meet without a taper', () => {
  const step: Drawn[] = [
    { stroke: [at(0.5, -6), at(0.5, 3)], widthMm: 0.5 },
    { stroke: [at(0.5, 3), at(0.5, 6)], widthMm: 0.2 },
  ]
  const [failure] = failures(measure(step), 'width-step')
  expect(failure?.summary).toContain('the largest from 0.5 mm to 0.2 mm')
  expect(failure?.artworkAt?.xMm).toBeCloseTo(at(0.5, 3)[0], 3)
  expect(failures(measure([straight]), 'width-step')).toEqual([])
})

describe('covers and stiffeners', () => {
  const coverOver = (objects: readonly Drawn[]) => measure([straight], [], cover(objects))
  test('an opening that is too small fails, one that is large enough holds', () => {
    expect(failures(coverOver([{ pad: [12, 20], sizeMm: 0.15 }]), 'coverlay-opening')[0]?.value.value).toBeCloseTo(
      0.15,
      2,
    )
    expect(measuredBy(coverOver([area(10, 10, 11.2, 14)]), 'coverlay-opening')).toMatchObject([{ verdict: 'meets' }])
  })
  test('an opening in a bend, and one too near, fail at their places', () => {
    const [x, y] = at(0.5, 0)
    const inside = coverOver([{ pad: [x, y], sizeMm: 1 }])
    expect(failures(inside, 'opening-to-bend')).toMatchObject([{ value: { value: 0 }, artworkAt: { frame: 'plan' } }])
    expect(failures(inside, 'coverlay-edge-in-bend')).toHaveLength(1)
    const far = coverOver([area(5, 5, 9, 9)])
    expect(failures(far, 'opening-to-bend')).toEqual([])
    expect(failures(far, 'coverlay-edge-in-bend')).toEqual([])
  })
  test('a stiffener under a bend fails', () => {
    const [x, y] = at(0.5, 0)
    const found = measure([straight], [], [stiffener([area(x - 3, y - 3, x + 3, y + 3)])])
    expect(failures(found, 'straight-film')).toMatchObject([{ value: { value: 0 } }])
    expect(failures(measure([straight], [], [stiffener([area(0, 0, 24, 45)])]), 'straight-film')).toEqual([])
  })
  test('a stiffener that ends with the coverlay fails, one that reaches past its end holds', () => {
    const overlap = (x: number) =>
      measure([straight], [], [...cover([area(8, 18, 14, 26)]), stiffener([area(0, 0, x, 45)])])
    expect(failures(overlap(14.5), 'stiffener-overlap')[0]?.value.value).toBeCloseTo(0.5, 3)
    expect(failures(overlap(13), 'stiffener-overlap')[0]?.value.value).toBe(0)
    expect(measuredBy(overlap(15.5), 'stiffener-overlap')).toMatchObject([{ verdict: 'meets' }])
  })
  test('a hole beside the edge of a stiffener fails', () => {
    const [hole] = design.plan?.holes ?? []
    const [x = 0, y = 0] = hole?.atMm ?? []
    const edgeAt = (mm: number) => measure([straight], [], [stiffener([area(x + mm, y - 4, x + 30, y + 4)])])
    const [failure] = failures(edgeAt(1), 'hole-to-stiffener-edge')
    expect(failure?.value.value).toBeLessThan(1.27)
    expect(failure).toMatchObject({ limit: { value: 1.27 }, artworkAt: { frame: 'plan' } })
    expect(failures(measure([straight], [], [stiffener([area(0, 0, 24, 45)])]), 'hole-to-stiffener-edge')).toEqual([])
  })
  test('a land in an opening is held by its rim or by spurs, or fails', () => {
    const land: Drawn[] = [
      { pad: [12, 20], sizeMm: 1 },
      {
        stroke: [
          [12, 20],
          [12, 26],
        ],
        widthMm: 0.2,
      },
    ]
    const held = (top: readonly Drawn[], sizeMm: number) => measure(top, [], cover([{ pad: [12, 20], sizeMm }]))
    expect(failures(held(land, 1.4), 'land-hold')[0]).toMatchObject({
      value: { value: 0 },
      artworkAt: { frame: 'plan' },
    })
    expect(measuredBy(held(land, 0.6), 'land-hold')).toMatchObject([{ verdict: 'meets' }])
    const spur: Drawn = {
      stroke: [
        [12, 20],
        [12, 18],
      ],
      widthMm: 0.2,
    }
    expect(measuredBy(held([...land, spur], 1.4), 'land-hold')).toMatchObject([
      { verdict: 'meets', value: { value: 1 } },
    ])
  })
})

test('etch-traps fails at its place for a sliver, and meets where every layer was measured', () => {
  const sliver = measure([straight, { area: box(5, 5, 9, 5.02) }])
  expect(failures(sliver, 'etch-traps')[0]).toMatchObject({ artworkAt: { frame: 'files' } })
  expect(failures(sliver, 'etch-traps')[0]?.value.value).toBeCloseTo(0.02, 3)
  expect(failures(measure([straight]), 'etch-traps')).toEqual([])
})
