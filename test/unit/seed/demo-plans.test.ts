import { describe, expect, it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { transformPath } from '@/lib/geometry'
import { areasOf, checkPlan, type Plan, pathInMm, pathInNm, toNm } from '@/lib/plan'
import { readArtwork } from '@/seed/read-files'
import { readDrawnDesign } from '../engine-assembly/demo-design-files'
import { EXACT_MOTIONS } from '../geometry/paths/shapes'
import { readDrillFile } from './read-artwork'

const NAMES = ['skua-rev-a', 'skua-rev-a-alternative', 'skua-rev-b', 'pipit-rev-a'] as const

function readDesign(name: (typeof NAMES)[number]) {
  const design = readDrawnDesign(name)
  if (design.plan === null) throw new Error(`${name} has no plan`)
  return { design, plan: design.plan }
}

/** What an inside corner of a radius adds to a square one. */
const fillet = (radius: number) => (1 - Math.PI / 4) * radius ** 2
/** What the shoulder of the finger adds to the link: an arc that rises from it and steps 0.25 mm aside within `rise`. */
const shoulder = (radius: number, rise: number) =>
  radius * rise - (radius ** 2 * Math.asin(rise / radius)) / 2 - (rise * (radius - 0.25)) / 2

const SKUA = (hinge: number, link: number, finger: number, rise: number) => ({
  controller: 52 * 34,
  hinge: 38 * 18 + 3 * fillet(hinge),
  sensor: 24 * 22,
  link: 30 * 14 + 2 * fillet(link) + 2 * shoulder(finger, rise),
  finger: 7 * 14.5,
})

const AREAS_MM2: Readonly<Record<(typeof NAMES)[number], Readonly<Record<string, number>>>> = {
  'skua-rev-a': SKUA(0.3, 0.5, 0.625, 0.5),
  'skua-rev-a-alternative': SKUA(0.3, 0.5, 0.625, 0.5),
  'skua-rev-b': SKUA(1.5, 1, 1.25, 0.75),
  'pipit-rev-a': {
    island: 24 * 45,
    'arm-1': 85 * 12 + fillet(2),
    'arm-2': 85 * 12 + 2 * fillet(2),
    'arm-3': 85 * 12 + fillet(2),
  },
}

const areasById = (plan: Plan) =>
  Object.fromEntries(areasOf(plan).areas.map(({ id, areaMm2 }) => [String(id), areaMm2]))

describe.each(NAMES)('the plan of %s', (name) => {
  const { design, plan } = readDesign(name)

  it('cuts into the areas of its closed forms, however it is turned or mirrored', () => {
    expect(checkPlan(plan)).toEqual([])
    for (const motion of EXACT_MOTIONS) {
      const carry = (nodes: Plan['dividingLines'][number]['nodes']) => pathInMm(transformPath(pathInNm(nodes), motion))
      const moved: Plan = {
        ...plan,
        outline: carry(plan.outline ?? []),
        dividingLines: plan.dividingLines.map((each) => ({ ...each, nodes: carry(each.nodes) })),
        areas: plan.areas.map((each) => ({
          ...each,
          markMm: carry([{ atMm: each.markMm, viaMm: null }])[0]?.atMm ?? [0, 0],
        })),
      }
      expect(areasOf(moved).problems).toEqual([])
      const found = areasById(moved)
      expect(Object.keys(found).sort()).toEqual(Object.keys(AREAS_MM2[name]).sort())
      for (const [id, areaMm2] of Object.entries(AREAS_MM2[name])) expect(found[id], id).toBeCloseTo(areaMm2, 6)
    }
  })

  it('agrees with what is stated, draws every bend, and folds without a clash', () => {
    const { items } = evaluate(design, {})
    const verdictOf = (id: string) => items.find(({ itemId }) => itemId === id)?.verdict
    for (const id of ['plan-agreement', 'bend-on-plan', 'folded-clearance', 'bend-fit']) {
      expect(verdictOf(id), id).toBe('meets')
    }
    // Whether it fits a room can be told only where the room is stated.
    expect(verdictOf('folded-envelope')).toBe(plan.housing === null ? 'not-computed' : 'meets')
  })
})

describe('the artwork of Pipit', () => {
  it('is the plan: the same corners in the same order, the same holes', () => {
    const { design, plan } = readDesign('pipit-rev-a')
    const text = new TextDecoder().decode(readArtwork('pipit-profile.gbr'))
    const ends = [...text.matchAll(/X(-?\d+)Y(-?\d+)(?:I-?\d+J-?\d+)?D01/g)].map(([, x, y]) => [Number(x), Number(y)])
    const nodes = (plan.outline ?? []).map(({ atMm }) => [...toNm(atMm)])
    expect(ends).toEqual([...nodes.slice(1), nodes[0]])
    for (const file of ['pipit-drill-plated.drl', 'pipit-drill-unplated.drl'] as const) {
      const { isPlated, holes } = readDrillFile(new TextDecoder().decode(readArtwork(file)))
      const ids = new Set(design.features.holes.filter(({ plated }) => plated === isPlated).map(({ id }) => id))
      const drawn = plan.holes
        .filter(({ holeId }) => ids.has(holeId))
        .flatMap(({ atMm: [x, y], columns, rows, columnStepMm, rowStepMm }) =>
          Array.from({ length: columns * rows }, (_, at) => {
            const [i, j] = [at % columns, Math.floor(at / columns)]
            return `${x + i * (columnStepMm?.[0] ?? 0) + j * (rowStepMm?.[0] ?? 0)}, ${y + i * (columnStepMm?.[1] ?? 0) + j * (rowStepMm?.[1] ?? 0)}`
          }),
        )
      expect(holes.map(({ xMm, yMm }) => `${xMm}, ${yMm}`).sort()).toEqual(drawn.sort())
    }
  })
})
