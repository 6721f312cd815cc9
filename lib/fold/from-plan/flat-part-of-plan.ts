import {
  edgesOfLoop,
  findInnerPoint,
  flattenEdges,
  locateInRegion,
  makeCheckedRegion,
  type Region,
} from '@/lib/geometry'
import { areasOf, NM_PER_MM, type Plan, pathInNm, toNm } from '@/lib/plan'
import type { FlatBand, FlatPart, FlatPlate, FlatSolid, LeafSpan, PlanePoint } from '../kinematics/flat-part'
import type { BandLine } from './band-borders'
import { type CutPiece, cutPlan } from './cut-plan'
import { joinPlates } from './join-plates'

/** Heights of a zone's faces over a plane that the whole part has in common. */
export interface ZoneHeights {
  readonly bottomMm: number
  readonly topMm: number
  /** As those of a solid. */
  readonly leaves?: readonly LeafSpan[]
}

/** What folding needs to know of a bend beside its place. */
export interface BendMeasures {
  /** Along the neutral surface. */
  readonly lengthMm: number
  /** Positive where the top face is inside. */
  readonly angleDeg: number
  readonly neutralMm: number
}

export interface FoldIssue {
  readonly code: 'area' | 'zone' | 'bend' | 'no-place' | 'overlap' | 'side' | 'torn'
  readonly message: string
  readonly bendLineId: string | null
}

export interface FlatPartOfPlan {
  readonly part: FlatPart
  /** Which bend each band belongs to. */
  readonly bendOfBand: ReadonlyMap<string, string>
  /** What stays plane. Its solid has the same id. */
  readonly pieces: readonly StillPiece[]
  /** Of each solid, plates and bands alike, by its id: with arcs as they were drawn. */
  readonly regions: ReadonlyMap<string, Region>
}

export interface StillPiece {
  readonly id: string
  readonly plateId: string
  /** Place of its area in the plan's areas. */
  readonly area: number
  readonly region: Region
}

export type FlatPartResult =
  | { readonly ok: true; readonly value: FlatPartOfPlan }
  | { readonly ok: false; readonly issues: readonly FoldIssue[] }

/** Arcs of outlines become chords that leave them by at most this much: 2 um. */
const CHORD_ERROR_NM = 2000

/**
 * Cuts a plan along its dividing lines and the borders of its bends into plates and bands.
 *
 * @param heights  by zone
 * @param bends  by bend; one that is missing is not known well enough to fold
 */
export function flatPartOfPlan(
  plan: Plan,
  heights: ReadonlyMap<string, ZoneHeights>,
  bends: ReadonlyMap<string, BendMeasures>,
): FlatPartResult {
  const { part, areas } = areasOf(plan)
  if (part === null) return refuse([issueOf('area', 'the plan has no outline')])
  const open = listOpen(plan, heights, bends)
  if (open.length > 0) return refuse(open)
  const bendOf = (index: number) => {
    const { id = '', bendId = '' } = plan.bendLines[index] ?? {}
    const measures = bends.get(bendId)
    return measures === undefined ? null : { id, bendId, measures }
  }
  const lines = plan.bendLines.map(({ bendId, fromMm, toMm }): BandLine => {
    const half = (bends.get(bendId)?.lengthMm ?? 0) / 2
    return { from: toNm(fromMm), to: toNm(toMm), halfWidthNm: half * NM_PER_MM }
  })
  const { pieces, lost, overlapping } = cutPlan(plan, part, lines)
  const misplaced = [
    ...lost.map((at) => issueOf('no-place', 'the axis runs through no area', bendOf(at)?.id)),
    ...overlapping.map((at) => issueOf('overlap', 'its band overlaps that of another bend', bendOf(at)?.id)),
  ]
  if (misplaced.length > 0) return refuse(misplaced)
  const plates = joinPlates(pieces, (piece) => lines[pieces[piece]?.bend ?? -1] ?? null)
  const heightsOf = ({ area }: Pick<CutPiece, 'area'>): ZoneHeights =>
    heights.get(areas[area]?.zoneId ?? '') ?? { bottomMm: 0, topMm: 0 }
  const issues: FoldIssue[] = []
  const bendOfBand = new Map<string, string>()
  const regions = new Map<string, Region>()
  const bands = pieces.flatMap((piece, index): FlatBand[] => {
    const [bend, line] = [bendOf(piece.bend), lines[piece.bend]]
    if (bend === null || line === undefined) return []
    const ends = plates.endsOf(index)
    if (ends === null) issues.push(issueOf('side', 'its band meets another part of the plan at its side', bend.id))
    else if (ends.before === ends.behind && bend.measures.angleDeg !== 0) {
      issues.push(
        issueOf('torn', 'both its sides are held together elsewhere: bending it would tear the part', bend.id),
      )
    }
    if (ends === null) return []
    const id = `${bend.id}.${index}`
    bendOfBand.set(id, bend.bendId)
    regions.set(id, piece.region)
    return [
      {
        ...solidOf(id, piece.region, heightsOf(piece)),
        ...placeBand(line, bend.measures.lengthMm),
        fromPlateId: ends.before,
        toPlateId: ends.behind,
        ...bend.measures,
      },
    ]
  })
  if (issues.length > 0) return refuse(issues)
  const still = pieces.flatMap((piece, index) =>
    piece.bend === -1
      ? [{ id: `area.${index}`, plateId: plates.plateOf(index), area: piece.area, region: piece.region }]
      : [],
  )
  for (const { id, region } of still) regions.set(id, region)
  const ids = [
    ...new Set([
      ...still.map(({ plateId }) => plateId),
      ...bands.flatMap(({ fromPlateId, toPlateId }) => [fromPlateId, toPlateId]),
    ]),
  ]
  const plateList = ids.map(
    (id): FlatPlate => ({
      id,
      solids: still.flatMap(({ id: pieceId, plateId, region, area }) =>
        plateId === id ? [solidOf(pieceId, region, heightsOf({ area }))] : [],
      ),
    }),
  )
  return { ok: true, value: { part: { plates: plateList, bands }, bendOfBand, pieces: still, regions } }
}

/** The piece that something drawn lies on, and its corners; null where it lies in a bend, or off the part. */
export function findPieceUnder(
  { pieces }: FlatPartOfPlan,
  nodes: Plan['components'][number]['nodes'],
): { readonly piece: StillPiece; readonly loops: FlatSolid['loops']; readonly region: Region } | null {
  const region = makeCheckedRegion(edgesOfLoop(pathInNm(nodes)), [])
  const inner = findInnerPoint(region)
  const piece = inner === null ? undefined : pieces.find((still) => locateInRegion(still.region, inner) === 'inside')
  return piece === undefined ? null : { piece, loops: loopsOf(region), region }
}

const refuse = (issues: readonly FoldIssue[]): FlatPartResult => ({ ok: false, issues })

const issueOf = (code: FoldIssue['code'], message: string, bendLineId: string | null = null): FoldIssue => ({
  code,
  message,
  bendLineId,
})

/** What is not known yet, before anything is cut. */
function listOpen(
  plan: Plan,
  heights: ReadonlyMap<string, ZoneHeights>,
  bends: ReadonlyMap<string, BendMeasures>,
): readonly FoldIssue[] {
  const areaIssues = areasOf(plan).areas.flatMap(({ zoneId, name, innerMm }) => {
    const where = name === null ? `the area round (${innerMm.join(', ')})` : `area "${name}"`
    if (zoneId === null) return [issueOf('area', `${where} has no zone`)]
    return heights.has(zoneId) ? [] : [issueOf('zone', `the thickness of the zone of ${where} is not known`)]
  })
  const bendIssues = plan.bendLines.flatMap(({ id, bendId }) => {
    const measures = bends.get(bendId)
    return measures === undefined || !(measures.lengthMm > 0)
      ? [issueOf('bend', 'its angle, radius or thickness is not known', id)]
      : []
  })
  return [...areaIssues, ...bendIssues]
}

function placeBand({ from, to }: BandLine, lengthMm: number): Pick<FlatBand, 'start' | 'across'> {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const long = Math.hypot(dx, dy)
  const across: PlanePoint = [0 - dy / long, dx / long + 0]
  return {
    across,
    start: [from[0] / NM_PER_MM - (across[0] * lengthMm) / 2, from[1] / NM_PER_MM - (across[1] * lengthMm) / 2],
  }
}

function solidOf(id: string, region: Region, heights: ZoneHeights): FlatSolid {
  return { id, loops: loopsOf(region), ...heights }
}

function loopsOf({ outer, holes }: Region): FlatSolid['loops'] {
  return [outer, ...holes].map((edges) =>
    flattenEdges(edges, CHORD_ERROR_NM).map(([x, y]): PlanePoint => [x / NM_PER_MM, y / NM_PER_MM]),
  )
}
