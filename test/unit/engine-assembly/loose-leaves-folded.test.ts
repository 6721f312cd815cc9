import { describe, expect, it } from 'vitest'
import { type Design, evaluateDraft } from '@/lib/engine'
import { listFoldNotes, listSolids, prepareFolding, shapeFold } from '@/lib/engine/folding'
import { writeStep } from '@/lib/solids'
import { makeExampleDesign } from '../catalogue/example-design'
import { addUnbondedLeaf } from '../catalogue/examples/changes'
import { drawStrip, stepLeaves } from '../catalogue/examples/geometry/folded-clearance'
import { readStep } from '../solids/read-step'

const GAP_UM = 50
const WIDTH_MM = 12
type Fold = readonly [axisMm: number, angleDeg: number, insideFace: 'top' | 'bottom']

/** A strip with two leaves 50 um apart on its arm, and one bend or several. */
function makeLeaved(folds: readonly Fold[], leafLengths: Design['bends'][number]['leafLengths']): Design {
  const design = structuredClone(makeExampleDesign())
  addUnbondedLeaf(design, GAP_UM)
  design.bends = design.bends.slice(0, folds.length)
  const kept = design.bends.map(({ id }) => id)
  for (const { crossings } of design.features.conductors) crossings.splice(0)
  drawStrip(
    design,
    10,
    folds.map(([axisMm], index) => [kept[index] ?? '', axisMm]),
  )
  design.bends.forEach((bend, index) => {
    const [, angleDeg = 90, insideFace = 'top'] = folds[index] ?? []
    Object.assign(bend, { angleDeg, insideFace, insideRadiusMm: 3, leafLengths, leafStepMm: null })
  })
  if (design.plan !== null) {
    design.plan.housing = { heldAreaId: 'a-board', alongXMm: null, alongYMm: null, heightMm: null }
  }
  return design
}

function fold(design: Design) {
  const { zones, bends } = evaluateDraft(design)
  const folding = prepareFolding(design, zones, bends)
  if (folding.kind !== 'foldable') throw new Error(JSON.stringify(folding))
  return { folding: folding.value, bends, zones }
}

const ONE: readonly Fold[] = [[50, 180, 'top']]

describe('leaves that are not bonded, folded', () => {
  it('are bodies of their own with the gap between them, flat and folded: all valid to a kernel of its own, each with the volume of its ring sector', async () => {
    const design = makeLeaved(ONE, 'equal')
    const { folding, bends } = fold(design)
    for (const steps of [0, 1]) {
      const solids = listSolids(design, folding, steps)
      const read = await readStep(
        writeStep(solids, { partNumber: 'QM-1', name: 'Part', revisionLabel: 'A', at: '2026-11-02T00:00:00.000Z' }),
      )
      expect(read.map(({ isValid }) => isValid)).toEqual(solids.map(() => true))
      const leaves = solids.flatMap(({ role, name }, at) => (role === 'bend' ? [{ name, body: read[at] }] : []))
      expect(leaves.map(({ name }) => name.slice(0, 13))).toEqual(['Hinge, leaf 1', 'Hinge, leaf 2'])
      // Area of a ring sector times width (exact geometry): angle x mean radius x thickness x width.
      for (const [at, leaf] of (bends[0]?.leaves ?? []).entries()) {
        const thickMm = leaf.thicknessUm / 1000
        const bent = Math.PI * (3 + leaf.innerDepthUm / 1000 + thickMm / 2) * thickMm * WIDTH_MM
        if (steps === 1) expect(leaves[at]?.body?.volumeMm3).toBeCloseTo(bent, 4)
      }
      // The inside of a half turn: its leaf nearest to the axis reaches 3 mm from it, the next one begins where that ends, and the gap.
      if (steps === 1) {
        const [inner, outer] = leaves.map(({ body }) => (body?.high[0] ?? 0) - (body?.low[0] ?? 0))
        const thickMm = (bends[0]?.leaves ?? []).map(({ thicknessUm }) => thicknessUm / 1000)
        expect((outer ?? 0) - (inner ?? 0)).toBeCloseTo(GAP_UM / 1000 + (thickMm[1] ?? 0), 3)
      }
    }
    expect(shapeFold(design, folding, 1).filter(({ role }) => role === 'bend')).toHaveLength(2)
  })

  it('cut alike, the outer one is taut and the inner one is longer than its path by the angle times the distance of their axes', () => {
    const design = makeLeaved(ONE, 'equal')
    const { folding, bends } = fold(design)
    const [inner, outer] = bends[0]?.leaves ?? []
    const pitchMm = ((outer?.formedAxisDepthUm ?? 0) - (inner?.formedAxisDepthUm ?? 0)) / 1000
    const [run] = folding.leafRuns
    expect(run?.slackMm[0]).toBeCloseTo(Math.PI * pitchMm, 9)
    expect(run?.slackMm[1]).toBe(0)
    // One figure: the bend's page, the item on lengths of leaves and the drawing's table say the same.
    expect(run?.slackMm[0]).toBeCloseTo(bends[0]?.leafLengthDifferenceMm ?? 0, 9)
    // The drawn length is that of the outer leaf along its own axis.
    const [band] = folding.flat.part.bands
    expect(band?.lengthMm).toBeCloseTo(Math.PI * (3 + (outer?.formedAxisDepthUm ?? 0) / 1000), 9)
    expect(listFoldNotes(design, folding)[0]).toMatch(/^Hinge: longer than their paths.*leaf 1 by 0\./)
    expect(listSolids(design, folding, 1).some(({ name }) => /leaf 1, 0\.\d+ mm longer than its path/.test(name))).toBe(
      true,
    )
  })

  it('stepped as they need, none has slack, and the drawn length is that of the shortest', () => {
    const design = makeLeaved(ONE, 'equal')
    stepLeaves(design)
    const { folding, bends } = fold(design)
    for (const mm of folding.leafRuns[0]?.slackMm ?? [1]) expect(mm).toBeLessThan(0.002)
    expect(folding.flat.part.bands[0]?.lengthMm).toBeCloseTo(
      Math.PI * (3 + (bends[0]?.leaves[0]?.formedAxisDepthUm ?? 0) / 1000),
      2,
    )
  })

  it('stepped by half of what they need, the outer one is taut and half is left over inside', () => {
    const design = makeLeaved(ONE, 'equal')
    const whole = fold(design).folding.leafRuns[0]?.slackMm[0] ?? 0
    const [bend] = design.bends
    if (bend !== undefined) Object.assign(bend, { leafLengths: 'stepped', leafStepMm: whole / 2 })
    const { folding } = fold(design)
    expect(folding.leafRuns[0]?.slackMm[0]).toBeCloseTo(whole / 2, 9)
    expect(folding.leafRuns[0]?.slackMm[1]).toBe(0)
  })

  it('stepped too far, the inner one is taut', () => {
    const design = makeLeaved(ONE, 'stepped')
    const [bend] = design.bends
    if (bend !== undefined) bend.leafStepMm = 5
    const { folding } = fold(design)
    expect(folding.leafRuns[0]?.slackMm[0]).toBe(0)
    expect(folding.leafRuns[0]?.slackMm[1]).toBeGreaterThan(4)
  })

  it('cut alike, what an outer leaf lacks in one bend it has to spare in an equal one that turns the other way', () => {
    const s: readonly Fold[] = [
      [40, 90, 'top'],
      [60, 90, 'bottom'],
    ]
    const both = fold(makeLeaved(s, 'equal')).folding.leafRuns
    expect(both).toHaveLength(1)
    // The axis of each leaf lies a little nearer to its own inside face: what is left is that difference alone.
    for (const mm of both[0]?.slackMm ?? [1]) expect(mm).toBeLessThan(0.05)
    const c = fold(makeLeaved([s[0] ?? [40, 90, 'top'], [60, 90, 'top']], 'equal')).folding.leafRuns
    const one = fold(makeLeaved(s.slice(0, 1), 'equal')).folding.leafRuns
    expect(c[0]?.slackMm[0]).toBeCloseTo(2 * (one[0]?.slackMm[0] ?? 0), 6)
  })

  it('turned over with their faces, tell the same', () => {
    const up = fold(makeLeaved([[50, 120, 'top']], 'equal')).folding.leafRuns[0]
    const down = fold(makeLeaved([[50, 120, 'bottom']], 'equal')).folding.leafRuns[0]
    expect(down?.slackMm[0]).toBe(0)
    expect(down?.slackMm[1]).toBeGreaterThan((up?.slackMm[0] ?? 0) * 0.8)
  })

  it.each([
    ['a quarter turn', ([x, y]: readonly [number, number]): [number, number] => [-y, x]],
    ['half a turn', ([x, y]: readonly [number, number]): [number, number] => [-x, -y]],
    ['a mirror', ([x, y]: readonly [number, number]): [number, number] => [x, -y]],
  ])('keep slack, lengths and taut leaf under %s of the plan, and with axes drawn from their other end', (_, move) => {
    const s: readonly Fold[] = [
      [40, 120, 'top'],
      [60, 45, 'bottom'],
    ]
    const plain = fold(makeLeaved(s, 'equal'))
    const moved = makeLeaved(s, 'equal')
    const { plan } = moved
    if (plan === null) throw new Error('a plan was drawn')
    const nodes = (list: { atMm: [number, number] }[]) => {
      for (const each of list) each.atMm = move(each.atMm)
    }
    nodes(plan.outline ?? [])
    for (const each of plan.dividingLines) nodes(each.nodes)
    for (const each of plan.areas) each.markMm = move(each.markMm)
    for (const each of plan.bendLines) [each.fromMm, each.toMm] = [move(each.toMm), move(each.fromMm)]
    const turned = fold(moved)
    expect(turned.folding.leafRuns).toEqual(plain.folding.leafRuns)
    const bandsOf = ({ folding }: typeof plain) =>
      folding.flat.part.bands.map(({ lengthMm, neutralMm }) => [lengthMm, neutralMm]).toSorted()
    expect(bandsOf(turned)).toEqual(bandsOf(plain))
  })

  it('wait for their lengths, and for the step where they are stepped', () => {
    for (const stated of [null, 'stepped'] as const) {
      const design = makeLeaved(ONE, stated)
      const { zones, bends } = evaluateDraft(design)
      const folding = prepareFolding(design, zones, bends)
      expect(folding.kind === 'missing' && folding.missing.map(({ path }) => path.at(-1))).toEqual([
        stated === null ? 'leafLengths' : 'leafStepMm',
      ])
    }
  })
})
