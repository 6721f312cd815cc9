import { type ArtworkFacts, gatherFacts, readSet } from '@/lib/artwork'
import { type Design, makeBlankDesign } from '@/lib/engine'
import { compareArtwork } from '@/lib/engine/artwork-check'
import { readWholeSet } from './real-sets'

interface Hole {
  readonly mm: number
  readonly count: number
  readonly isPlated: boolean
}

interface Truth {
  readonly layers: number
  /** Of the middle of the profile's strokes, or over them where that is what was measured; null where no file draws the profile alone. */
  readonly outlineMm: readonly [number, number, number, number] | null
  /** Null where the profile does not close by end points. */
  readonly areaMm2: number | null
  readonly holes: readonly Hole[]
  /** A mechanical layer of which the set's notes say that it is the profile, as a person would. */
  readonly profileBySomebody?: string
  /** Facts that differ however the design is made, since the set is a part of one. */
  readonly differs?: readonly string[]
}

const plated = (holes: Readonly<Record<string, number>>): Hole[] =>
  Object.entries(holes).map(([mm, count]) => ({ mm: Number(mm), count, isPlated: true }))
const unplated = (holes: Readonly<Record<string, number>>): Hole[] =>
  plated(holes).map((hole) => ({ ...hole, isPlated: false }))

/** What each set is by its SOURCE.md and fact file, and of the last one by the drill report (`.DRR`) that its own program wrote; outlines as measured there, in mm. */
const TRUTH = {
  'flex-flexgrid-v4': {
    layers: 2,
    outlineMm: [7.488, -159.3683, 292.9965, -41.3665],
    areaMm2: 15893.8771,
    holes: plated({ '0.3': 132 }),
  },
  'flex-breakout': {
    layers: 2,
    outlineMm: [31.0763, -9.55, 86.5182, 26.147],
    areaMm2: 1223.8351,
    holes: plated({ '0.2': 109 }),
  },
  // Its profile is not chained by end points, so its fact file gives the extent of the strokes alone: 0.05 mm wide.
  'flex-n64-full': {
    layers: 2,
    outlineMm: [85.73, -113.46, 215.33, -89.57],
    areaMm2: null,
    holes: plated({ '0.2': 36, '0.254': 36, '0.4': 25, '0.6': 12, '0.8': 4 }),
  },
  // Strokes of the outline meet others in their middle; its coordinates alone are measured.
  'flex-precursor-pvt2': {
    layers: 2,
    outlineMm: [-31.75, -13.95, -5.5, 65.5],
    areaMm2: null,
    holes: plated({ '0.2499': 23 }),
    profileBySomebody: 'bt-fpc-pvt2b.GM2',
  },
  'rigid-flex-interface': {
    layers: 4,
    outlineMm: [-218.7045, -38.6328, 214.5678, 4.6782],
    areaMm2: 1640.3038,
    holes: plated({ '0.2': 143, '2': 12 }),
  },
  // Nothing says whether its holes are plated.
  'rigid-headstage64': { layers: 8, outlineMm: [8.5921, 5.792, 27.5923, 24.7922], areaMm2: 283.5059, holes: [] },
  // Four of the fourteen copper layers; the board's outline stands in a drawing sheet.
  'rigid-limesdr-qpcie': {
    layers: 14,
    outlineMm: null,
    areaMm2: null,
    holes: [
      ...plated({ '0.2': 4171, '0.381': 10, '1': 32, '1.25': 5, '1.9': 6, '2.4': 3, '3': 7, '3.1': 2 }),
      ...unplated({ '0.9': 15, '1': 1, '1.3': 1, '3.18': 2 }),
    ],
    differs: ['Number of conductor layers'],
  },
} as const satisfies Readonly<Record<string, Truth>>
export type SetName = keyof typeof TRUTH
export const SETS = Object.keys(TRUTH) as SetName[]
export const truthOf = (set: SetName): Truth => TRUTH[set]

const known = new Map<SetName, ArtworkFacts>()

export function factsOf(set: SetName): ArtworkFacts {
  let facts = known.get(set)
  if (facts === undefined) {
    const { profileBySomebody } = truthOf(set)
    const said = { role: 'profile', side: null, layerNumber: null } as const
    const roles = new Map(profileBySomebody === undefined ? [] : [[profileBySomebody, said] as const])
    facts = gatherFacts(readSet(readWholeSet(set), { roles }), () => '')
    known.set(set, facts)
  }
  return facts
}

const COVERS = { top: 'top cover', bottom: 'bottom cover' } as const

/** A design that states what the set states: a layer for each copper file, the outline as a rectangle of its size, the holes by size, plating and number. */
export function matching(set: SetName): Design {
  const { layers, outlineMm, holes } = truthOf(set)
  const design = structuredClone(makeBlankDesign(set))
  const conductors = Array.from({ length: layers }, (_, at) => ({
    id: `l${at + 1}`,
    name: `L${at + 1}`,
    kind: 'conductor',
  }))
  const cover = (side: keyof typeof COVERS) => ({ id: side, name: COVERS[side], kind: 'coverlay-film' })
  const stiffener = { id: 'stiffener', name: 'stiffener', kind: 'stiffener' }
  // The comparison asks for kinds and their order alone.
  design.construction = {
    layers: [cover('top'), ...conductors, cover('bottom'), stiffener],
    zones: [],
  } as unknown as Design['construction']
  if (outlineMm !== null) {
    const [minX, minY, maxX, maxY] = outlineMm
    design.features.outline = {
      verticesMm: [
        [minX, minY],
        [maxX, minY],
        [maxX, maxY],
        [minX, maxY],
      ],
      rollingDirection: null,
    }
  }
  design.features.holes = holes.map(({ mm, isPlated }, at) => ({
    id: `h${at}`,
    name: `Holes of ${mm}${isPlated ? '' : ', not plated'}`,
    drillMm: mm,
    plated: isPlated,
  })) as unknown as Design['features']['holes']
  // Of the plan, the number of holes alone is asked for where the part is not drawn.
  design.plan = {
    holes: holes.map(({ count }, at) => ({ holeId: `h${at}`, columns: count, rows: 1 })),
  } as unknown as Design['plan']
  return design
}

export interface Change {
  readonly design?: (design: Design) => void
  readonly files?: (artwork: ArtworkFacts) => void
  readonly zones?: Parameters<typeof compareArtwork>[0]['zones']
}

export function compare(set: SetName, change: Change = {}): ReturnType<typeof compareArtwork> {
  const design = matching(set)
  change.design?.(design)
  const artwork = change.files === undefined ? factsOf(set) : structuredClone(factsOf(set))
  change.files?.(artwork)
  return compareArtwork({ design, drawnPart: null, zones: change.zones ?? [], artwork, onPlan: null, ground: null })
}
