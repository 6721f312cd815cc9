import { describe, expect, test } from 'vitest'
import { extentOfLayer, readGerber, shapeOfLayer } from '@/lib/artwork'
import { listRealFiles } from './real-sets'

/** What is asked of the area; the fact files state theirs to 0.02 to 0.2 %. */
const AREA_TOLERANCE_FRACTION = 0.005
/** The largest layers take some seconds of a processor that does nothing else. */
const LONGEST_TEST_MS = 240_000
const files = listRealFiles().filter(({ facts }) => typeof facts.areaMm2 === 'number')
const COUNTS = {
  flashes: 'flashes',
  strokes: 'lines',
  arcs: 'arcs',
  regions: 'regions',
  contours: 'contours',
  regionLines: 'regionLines',
  regionArcs: 'regionArcs',
  clearSwitches: 'clearSwitches',
  stepRepeats: 'stepRepeats',
  blocks: 'blocks',
  apertures: 'apertures',
  macros: 'macros',
} as const

describe.skipIf(files.length === 0)('layers of real circuits agree with an independent rasterisation', () => {
  test.each(files.map((file) => [file.set, file.facts.file, file] as const))(
    '%s %s',
    (_set, _name, { facts, read }) => {
      const reading = readGerber(read())
      for (const [fact, count] of Object.entries(COUNTS)) expect(reading.counts[count], fact).toBe(facts[fact])
      const extent = extentOfLayer(reading.objects)
      if (extent === null) expect(facts.extentMm).toBeNull()
      for (const [at, value] of (extent ?? []).entries())
        expect(Math.abs(value / 1e6 - (facts.extentMm?.[at] ?? Number.NaN))).toBeLessThan(0.0005)
      const { areaMm2 } = shapeOfLayer(reading.objects)
      const expected = facts.areaMm2 ?? Number.NaN
      expect(Math.abs(areaMm2 - expected)).toBeLessThanOrEqual(AREA_TOLERANCE_FRACTION * expected + 1e-6)
    },
    LONGEST_TEST_MS,
  )
})
