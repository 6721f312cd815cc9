import { describe, expect, test } from 'vitest'
import { type ArtworkSet, extentOfLayer, readSet } from '@/lib/artwork'
import { listRealFiles } from './real-sets'

const files = listRealFiles()
const drills = files.filter(({ facts }) => facts.kind === 'drill')
const sets = new Map<string, ArtworkSet>()

/** Sets are read whole, as drills may need to know where the circuit lies. Large layers are not needed for that. */
function readWhole(name: string): ArtworkSet {
  let set = sets.get(name)
  if (set === undefined) {
    set = readSet(
      files.filter((file) => file.set === name).map(({ facts, read }) => ({ name: facts.file, bytes: read() })),
    )
    sets.set(name, set)
  }
  return set
}

describe.skipIf(drills.length === 0)('drill files of real circuits agree with what was measured independently', () => {
  test.each(drills.map((file) => [file.set, file.facts.file, file] as const))('%s %s', (set, name, { facts }) => {
    const reading = readWhole(set).files.find((file) => file.name === name)?.reading
    if (reading?.kind !== 'drill') throw new Error(`read as ${reading?.kind}`)
    const hits: Record<string, number> = {}
    for (const tool of reading.tools) {
      const diameter = Number((tool.diameterNm / 1e6).toFixed(4))
      if (tool.hits > 0) hits[diameter] = (hits[diameter] ?? 0) + tool.hits
    }
    if (facts.drillHits !== undefined) expect(hits).toEqual(facts.drillHits)
    const moves = Object.values(facts.routedMoves ?? {}).reduce((sum, count) => sum + count, 0)
    if (facts.routedMoves !== undefined) expect(reading.counts.routes).toBe(moves)
    const extent = extentOfLayer(reading.objects)
    if (extent === null) expect(facts.extentMm ?? null).toBeNull()
    for (const [at, value] of (extent ?? []).entries())
      expect(Math.abs(value / 1e6 - (facts.extentMm?.[at] ?? Number.NaN)), `extent ${at}`).toBeLessThan(0.001)
  })
})

describe.skipIf(files.length === 0)('roles in real sets', () => {
  test.each([
    ['flex-breakout', 'flex_interface.GTL', 'copper', 1],
    ['rigid-flex-interface', 'glasses_final.G1', 'copper', 2],
    ['rigid-flex-interface', 'glasses_final.GCT4', 'coverlay', null],
    ['flex-n64-full', 'rcp2n64adv2-B_Stiffener.gbr', 'stiffener', null],
    ['flex-flexgrid-v4', 'OM-FlexGrid-Flex-B_Cu.gbr', 'copper', 2],
    ['rigid-headstage64', 'headstage-64_via-reduce.G4L', 'copper', 4],
    ['rigid-headstage64', 'headstage-64_via-reduce.XLN.0106', 'holes', null],
  ])('%s %s is %s', (set, name, role, layerNumber) => {
    const found = readWhole(set).files.find((file) => file.name === name)
    expect(found?.role).toMatchObject({ role, layerNumber })
  })
})
