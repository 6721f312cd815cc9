import { describe, expect, test } from 'vitest'
import { type ArtworkFacts, gatherFacts, readSet } from '@/lib/artwork'
import { type Design, makeBlankDesign } from '@/lib/engine'
import { compareArtwork } from '@/lib/engine/artwork-check'
import { listRealFiles, readWholeSet } from './real-sets'

const files = listRealFiles()
const SETS = [
  'flex-flexgrid-v4',
  'flex-breakout',
  'flex-n64-full',
  'rigid-flex-interface',
  'rigid-headstage64',
] as const
type SetName = (typeof SETS)[number]
const known = new Map<SetName, ArtworkFacts>()

function factsOf(set: SetName): ArtworkFacts {
  let facts = known.get(set)
  if (facts === undefined) {
    facts = gatherFacts(readSet(readWholeSet(set)), () => '')
    known.set(set, facts)
  }
  return facts
}

const outlineOf = (set: SetName) =>
  factsOf(set).files.find(({ role, outline }) => role.role === 'profile' && outline !== null)

/** What each set is by its SOURCE.md and fact file; outlines as measured there, in mm. */
const TRUTH: Readonly<
  Record<
    SetName,
    {
      layers: number
      outlineMm: readonly [number, number, number, number]
      areaMm2: number | null
      holes: Readonly<Record<string, number>>
    }
  >
> = {
  'flex-flexgrid-v4': {
    layers: 2,
    outlineMm: [7.488, -159.3683, 292.9965, -41.3665],
    areaMm2: 15893.8771,
    holes: { '0.3': 132 },
  },
  'flex-breakout': {
    layers: 2,
    outlineMm: [31.0763, -9.55, 86.5182, 26.147],
    areaMm2: 1223.8351,
    holes: { '0.2': 109 },
  },
  // Its profile is not chained by end points, so its fact file gives the extent of the strokes alone: 0.05 mm wide.
  'flex-n64-full': {
    layers: 2,
    outlineMm: [85.73, -113.46, 215.33, -89.57],
    areaMm2: null,
    holes: { '0.2': 36, '0.254': 36, '0.4': 25, '0.6': 12, '0.8': 4 },
  },
  'rigid-flex-interface': {
    layers: 4,
    outlineMm: [-218.7045, -38.6328, 214.5678, 4.6782],
    areaMm2: 1640.3038,
    holes: { '0.2': 143, '2': 12 },
  },
  'rigid-headstage64': { layers: 8, outlineMm: [8.5921, 5.792, 27.5923, 24.7922], areaMm2: 283.5059, holes: {} },
}

/** A design that states what the set states: a layer for each copper file, the outline as a rectangle of its size, the holes by size. */
function matching(set: SetName): Design {
  const { layers, outlineMm, holes } = TRUTH[set]
  const [minX, minY, maxX, maxY] = outlineMm
  const design = structuredClone(makeBlankDesign(set))
  const conductors = Array.from({ length: layers }, (_, at) => ({
    id: `l${at + 1}`,
    name: `L${at + 1}`,
    kind: 'conductor',
  }))
  const cover = (id: string) => ({ id, name: id, kind: 'coverlay-film' })
  const stiffener = { id: 'stiffener', name: 'stiffener', kind: 'stiffener' }
  // The comparison asks for kinds and their order alone.
  design.construction = {
    layers: [cover('top'), ...conductors, cover('bottom'), stiffener],
    zones: [],
  } as unknown as Design['construction']
  design.features.outline = {
    verticesMm: [
      [minX, minY],
      [maxX, minY],
      [maxX, maxY],
      [minX, maxY],
    ],
    rollingDirection: null,
  }
  const drills = factsOf(set).files.flatMap(({ tools }) => tools ?? [])
  design.features.holes = Object.keys(holes).map((size) => ({
    id: `h${size}`,
    name: `Holes of ${size}`,
    drillMm: Number(size),
    plated: drills.find(({ diameterMm }) => Math.abs(diameterMm - Number(size)) < 1e-3)?.plating === 'plated',
  })) as unknown as Design['features']['holes']
  return design
}

function compare(set: SetName, change: (design: Design) => void = () => {}) {
  const design = matching(set)
  change(design)
  return compareArtwork({ design, drawnPart: null, zones: [], artwork: factsOf(set), onPlan: null, ground: null })
}
const differences = (found: ReturnType<typeof compare>) => [
  ...new Set(found.pairs.filter(({ agrees }) => !agrees).map(({ fact }) => fact)),
]

describe.skipIf(files.length === 0)('facts of real sets agree with what was measured independently', () => {
  test.each(SETS)('%s: outline', (set) => {
    const { outlineMm, areaMm2 } = TRUTH[set]
    const outline = outlineOf(set)?.outline
    for (const [at, mm] of outlineMm.entries())
      expect(Math.abs((outline?.extentMm[at] ?? Number.NaN) - mm), `extent ${at}`).toBeLessThan(0.001)
    expect(outline?.isClosed).toBe(areaMm2 !== null)
    if (areaMm2 === null) return
    expect(outline?.loops.filter(({ depth }) => depth === 0)).toHaveLength(1)
    expect(Math.abs((outline?.loops[0]?.areaMm2 ?? 0) - areaMm2)).toBeLessThan(1e-5 * areaMm2)
  })

  test.each([
    ['flex-breakout', 'flex_interface.GTL', 0.1],
    ['rigid-flex-interface', 'glasses_final.GTL', 0.2032],
    ['rigid-flex-interface', 'glasses_final.G1', 0.075],
    ['rigid-flex-interface', 'glasses_final.GBL', 0.1],
  ] as const)('%s %s: narrowest stroke %d mm', (set, name, mm) => {
    const narrowest = factsOf(set).files.find((file) => file.name === name)?.narrowestStrokeMm
    expect(Math.abs((narrowest ?? 0) - mm)).toBeLessThan(1e-4)
  })
})

describe.skipIf(files.length === 0)('a design that says what a real set says', () => {
  test.each(SETS)('%s has no contradiction', (set) => {
    expect(differences(compare(set))).toEqual([])
  })

  test.each(SETS)('%s: each fact that is broken is found by itself', (set) => {
    const { layers, holes } = TRUTH[set]
    const broken = (change: (design: Design) => void) => differences(compare(set, change))
    expect(broken(({ construction }) => void construction.layers.splice(1, 1))).toContain('Number of conductor layers')
    expect(
      broken(({ construction }) => void construction.layers.splice(1, 0, construction.layers[1] as never)),
    ).toContain('Number of conductor layers')
    expect(layers).toBeGreaterThan(1)
    expect(
      broken(({ features }) => {
        for (const corner of features.outline?.verticesMm ?? []) corner[0] *= 1.01
      }),
    ).toEqual(['Size of the outline'])
    for (const [at, size] of Object.keys(holes).entries()) {
      const written = `${Number(size)} mm`
      const other = broken(({ features }) => void Object.assign(features.holes[at] ?? {}, { drillMm: 7.77 }))
      expect(other.sort()).toEqual([`Holes of ${written}`, 'Holes of 7.77 mm'].sort())
    }
  })
})
