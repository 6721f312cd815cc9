import { describe, expect, it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { checkFold, listSolids, type NamedSolid, prepareFolding } from '@/lib/engine/folding'
import { flatPartOfPlan, listExactSolids } from '@/lib/fold'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { writeStep } from '@/lib/solids'
import { DEMO_DESIGNS, readDrawnDesign } from '../engine-assembly/demo-design-files'
import { readStep } from './read-step'

const IDENTITY = { partNumber: 'QM-1', name: 'Part', revisionLabel: 'A', at: '2026-11-02T00:00:00.000Z' }

/** Every solid is closed and valid to the kernel, and has the volume of its closed form. */
async function expectRead(solids: readonly NamedSolid[], relative: number) {
  const read = await readStep(writeStep(solids, IDENTITY))
  expect(read.length).toBe(solids.length)
  read.forEach(({ isValid, volumeMm3 }, at) => {
    const { solid, name } = solids[at] ?? {}
    expect({ name, isValid }).toEqual({ name, isValid: true })
    expect(Math.abs(volumeMm3 / (solid?.volumeMm3 ?? 0) - 1), `${name}: ${volumeMm3}`).toBeLessThan(relative)
  })
  return read
}

describe.each(DEMO_DESIGNS)('%s as STEP', (name) => {
  const design = readDrawnDesign(name)
  const { zones, bends } = evaluate(design)
  const folding = prepareFolding(design, zones, bends)
  if (folding.kind !== 'foldable') throw new Error(`${name} cannot be folded`)
  const all = folding.value.order.length

  it.each([
    ['flat', 0],
    ['folded', all],
  ])('%s, a kernel of its own finds every body valid, with the volume of its closed form', async (_, steps) => {
    const read = await expectRead(listSolids(design, folding.value, steps), 1e-6)
    if (steps === 0) return
    const { envelope } = checkFold(folding.value, 0.1)
    for (const axis of [0, 1, 2] as const) {
      // The clash check adds the sag of its strips of 15 degrees to the box.
      const [low, high] = [
        Math.min(...read.map((each) => each.low[axis] ?? 0)),
        Math.max(...read.map((each) => each.high[axis] ?? 0)),
      ]
      expect(Math.abs(low - envelope.low[axis])).toBeLessThan(0.2)
      expect(Math.abs(high - envelope.high[axis])).toBeLessThan(0.2)
    }
  })

  it('the same bytes each time', () => {
    const write = () => Buffer.from(writeStep(listSolids(design, folding.value, all), IDENTITY))
    expect(write().equals(write())).toBe(true)
  })
})

/** A strip of 40 by 12 whose lower edge runs over the bend at a slant, and whose upper edge bulges there by an arc, with a round hole in one end. */
const SLANTED: Plan = {
  ...EMPTY_PLAN,
  outline: [
    { atMm: [0, 0], viaMm: null },
    { atMm: [15, 0], viaMm: null },
    { atMm: [25, -4], viaMm: null },
    { atMm: [40, -4], viaMm: null },
    { atMm: [40, 12], viaMm: null },
    { atMm: [26, 12], viaMm: [20, 14] },
    { atMm: [14, 12], viaMm: null },
    { atMm: [0, 12], viaMm: null },
  ],
  cutOuts: [
    {
      id: 'hole',
      name: 'Hole',
      nodes: [
        { atMm: [3, 6], viaMm: [5, 8] },
        { atMm: [7, 6], viaMm: [5, 4] },
      ],
    },
    {
      id: 'slot',
      name: 'Slot in the bend',
      nodes: [
        { atMm: [18, 6.5], viaMm: null },
        { atMm: [22, 7], viaMm: [23, 8] },
        { atMm: [22, 9], viaMm: null },
        { atMm: [18, 8.5], viaMm: null },
      ],
    },
  ],
  areas: [{ id: 'a', name: 'All', zoneId: 'z', markMm: [1, 1] }],
  bendLines: [{ id: 'l', bendId: 'b', fromMm: [20, -5], toMm: [20, 15] }],
}

describe('borders that cross a bend at a slant or by an arc, with holes in it', () => {
  it.each([170, 90, -90, -180, 0])('bent by %s degrees', async (angleDeg) => {
    const neutralMm = 0.03
    const radiusMm = 3
    const lengthMm = angleDeg === 0 ? 5 : (Math.abs(angleDeg) * Math.PI * radiusMm) / 180
    const flat = flatPartOfPlan(
      SLANTED,
      new Map([['z', { bottomMm: -0.2, topMm: 0.15 }]]),
      new Map([['b', { angleDeg, lengthMm, neutralMm }]]),
    )
    if (!flat.ok) throw new Error(flat.issues.map(({ message }) => message).join('; '))
    const { part, regions } = flat.value
    const [first] = part.plates
    const solids = listExactSolids(part, [], regions, first?.id ?? '', new Map()).map((solid) => ({
      solid,
      name: solid.id,
      role: 'flex' as const,
    }))
    expect(solids.length).toBe(3)
    await expectRead(solids, 1e-6)
  })
})

describe('the text of the file', () => {
  const design = readDrawnDesign('skua-rev-a')
  const { zones, bends } = evaluate(design)
  const folding = prepareFolding(design, zones, bends)
  const solids = folding.kind === 'foldable' ? listSolids(design, folding.value, 0).slice(0, 1) : []

  it('refers to no entity that it lacks, and closes each section (ISO 10303-21)', () => {
    const text = new TextDecoder().decode(writeStep(solids, IDENTITY))
    const defined = new Set([...text.matchAll(/^(#\d+)=/gm)].map(([, id]) => id))
    const used = [...text.replaceAll(/^#\d+=/gm, '').matchAll(/#\d+/g)].map(([id]) => id)
    expect(used.filter((id) => !defined.has(id))).toEqual([])
    expect(text.startsWith('ISO-10303-21;\nHEADER;\n')).toBe(true)
    expect(text.endsWith('ENDSEC;\nEND-ISO-10303-21;\n')).toBe(true)
  })

  it('writes names with quotes, backslashes and letters outside ASCII as the standard has them', () => {
    const named = solids.map((each) => ({ ...each, name: "Möwe's \\ 1" }))
    const text = new TextDecoder().decode(writeStep(named, IDENTITY))
    expect(text).toContain("MANIFOLD_SOLID_BREP('M\\X2\\00F6\\X0\\we''s \\\\ 1'")
  })
})
