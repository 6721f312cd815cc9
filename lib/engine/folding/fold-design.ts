import {
  type CarriedBody,
  checkFolded,
  type FlatPartOfPlan,
  type FoldedCheck,
  type FoldOrder,
  type FoundOrder,
  findFoldOrder,
  findPieceUnder,
  flatPartOfPlan,
  foldPart,
} from '@/lib/fold'
import type { Region } from '@/lib/geometry'
import { areasOf, type Plan } from '@/lib/plan'
import { callByName, type Design } from '../design'
import { rememberAnswers } from '../numerics'
import type { BendResult, MissingInput, ZoneResult } from '../results'
import { findHeights, type Heights } from './heights'
import { type LeafRun, listMissingLeafLengths } from './leaf-runs'

/** A part that can be folded: its pieces, what stands on them, and the plate that stays. */
export interface FoldableDesign {
  readonly flat: FlatPartOfPlan
  readonly carried: readonly CarriedBody[]
  readonly fixedPlateId: string
  /** Bands that bend together, in the order of the design's bends. */
  readonly order: FoldOrder
  /** Of each solid by its id, what stands on the part included. */
  readonly regions: ReadonlyMap<string, Region>
  /** Of bends whose leaves are not bonded to each other. */
  readonly leafRuns: readonly LeafRun[]
}

export type Foldable =
  | { readonly kind: 'foldable'; readonly value: FoldableDesign }
  | { readonly kind: 'missing'; readonly missing: readonly MissingInput[] }
  /** A contradiction of the plan: a sentence for each, with the bend where there is one. */
  | {
      readonly kind: 'impossible'
      readonly reasons: readonly { readonly bendId: string | null; readonly reason: string }[]
    }

/** Cuts a design's plan into what folds. */
export function prepareFolding(design: Design, zones: readonly ZoneResult[], bends: readonly BendResult[]): Foldable {
  const { plan } = design
  if (plan === null) return { kind: 'missing', missing: [{ path: ['plan'], label: 'plan of the part' }] }
  const missing = listMissing(design, plan, bends)
  if (missing.length > 0) return { kind: 'missing', missing }
  const drawn = new Set(areasOf(plan).areas.flatMap(({ zoneId }) => (zoneId === null ? [] : [zoneId])))
  const heights = findHeights(design, plan, zones, bends, drawn)
  if (heights === null) {
    return {
      kind: 'missing',
      missing: [{ path: ['construction', 'zones'], label: 'a layer that runs through all drawn zones' }],
    }
  }
  const flat = flatPartOfPlan(plan, heights.zones, heights.bends)
  if (!flat.ok) {
    const reasons = flat.issues.map(({ bendLineId, message }) => ({
      bendId: plan.bendLines.find(({ id }) => id === bendLineId)?.bendId ?? null,
      reason: message,
    }))
    return { kind: 'impossible', reasons }
  }
  const components = placeComponents(plan, flat.value, heights)
  const placed = [...components.values()].filter((found) => found !== null)
  const carried = placed.map(({ body }) => body)
  const regions = new Map([...flat.value.regions, ...placed.map(({ body, region }) => [body.id, region] as const)])
  if (carried.length < components.size) {
    const reasons = plan.components
      .filter(({ id }) => components.get(id) === null)
      .map(({ componentId }) => ({
        bendId: null,
        reason: `component ${nameComponent(design, componentId)} lies in a bend, or off the part`,
      }))
    return { kind: 'impossible', reasons }
  }
  const fixed = findHeldPlate(plan, flat.value) ?? findLargestPlate(flat.value)
  const order = design.bends.flatMap(({ id }) => {
    const bands = flat.value.part.bands
      .filter((band) => flat.value.bendOfBand.get(band.id) === id)
      .map((band) => band.id)
    return bands.length === 0 ? [] : [bands]
  })
  return {
    kind: 'foldable',
    value: { flat: flat.value, carried, fixedPlateId: fixed, order, regions, leafRuns: heights.leafRuns },
  }
}

/** Answers that are kept: a few designs side by side. */
const MOST_KEPT = 12

type Question = Omit<FoldableDesign, 'flat' | 'regions' | 'leafRuns'> & {
  readonly part: FlatPartOfPlan['part']
  readonly clearanceMm: number
}

const questionOf = ({ flat, carried, fixedPlateId, order }: FoldableDesign, clearanceMm: number): Question => ({
  part: flat.part,
  carried,
  fixedPlateId,
  order,
  clearanceMm,
})

const checkOnce = rememberAnswers(
  MOST_KEPT,
  ({ part, carried, fixedPlateId, clearanceMm }: Question): FoldedCheck =>
    checkFolded(part, carried, foldPart(part, fixedPlateId), clearanceMm),
)

const findOnce = rememberAnswers(
  MOST_KEPT,
  ({ part, carried, fixedPlateId, order, clearanceMm }: Question): FoundOrder =>
    findFoldOrder(part, carried, fixedPlateId, order, clearanceMm),
)

/** The part in its folded state: clashes, least gap and envelope. */
export const checkFold = (folding: FoldableDesign, clearanceMm: number): FoldedCheck =>
  checkOnce(questionOf(folding, clearanceMm))

/** An order of bends in which nothing clashes on the way. */
export const findOrder = (folding: FoldableDesign, clearanceMm: number): FoundOrder =>
  findOnce(questionOf(folding, clearanceMm))

/** A bend that closes a chain of areas, and by how much its end misses the area that it is drawn to. */
export interface OpenChain {
  readonly bendId: string
  readonly offsetMm: number
  readonly turnDeg: number
}

/** What is left at the bends that close chains of areas, folded whole; a chain that closes has next to nothing. */
export function listChains({ flat, fixedPlateId }: FoldableDesign): readonly OpenChain[] {
  return foldPart(flat.part, fixedPlateId).closures.map(({ bandId, offsetMm, turnDeg }) => ({
    bendId: flat.bendOfBand.get(bandId) ?? '',
    offsetMm: Math.hypot(...offsetMm),
    turnDeg: Math.hypot(...turnDeg),
  }))
}

function listMissing(design: Design, plan: Plan, bends: readonly BendResult[]): readonly MissingInput[] {
  const areas = areasOf(plan).problems.map(({ path, message }) => ({ path: ['plan', ...path], label: message }))
  const undrawn = design.bends.flatMap(({ id, name }) =>
    plan.bendLines.some(({ bendId }) => bendId === id)
      ? []
      : [{ path: ['plan', 'bendLines'], label: `axis of ${callByName('bend', name)} in plan` }],
  )
  const unknown = design.bends.flatMap(({ id, name }, index) => {
    const leaves = bends.find(({ bendId }) => bendId === id)?.leaves ?? []
    return leaves.length === 0 ? [{ path: ['bends', index], label: `section of ${callByName('bend', name)}` }] : []
  })
  const heights = plan.components.flatMap(({ componentId, face, heightMm }, index) => {
    const name = nameComponent(design, componentId)
    return [
      ...(face === null ? [{ path: ['plan', 'components', index, 'face'], label: `face of component ${name}` }] : []),
      ...(heightMm === null
        ? [{ path: ['plan', 'components', index, 'heightMm'], label: `height of component ${name}` }]
        : []),
    ]
  })
  return [...areas, ...undrawn, ...unknown, ...listMissingLeafLengths(design, bends), ...heights]
}

const nameComponent = (design: Design, componentId: string) =>
  design.features.components.find(({ id }) => id === componentId)?.name ?? componentId

/** Null for a component whose body lies in a bend, or off the part. */
function placeComponents(
  plan: Plan,
  flat: FlatPartOfPlan,
  heights: Heights,
): ReadonlyMap<string, { readonly body: CarriedBody; readonly region: Region } | null> {
  return new Map(
    plan.components.map(({ id, face, heightMm, nodes }) => {
      const under = findPieceUnder(flat, nodes)
      const zone = heights.zones.get(areasOf(plan).areas[under?.piece.area ?? -1]?.zoneId ?? '')
      if (under === null || zone === undefined || heightMm === null) return [id, null] as const
      const [bottomMm, topMm] =
        face === 'bottom' ? [zone.bottomMm - heightMm, zone.bottomMm] : [zone.topMm, zone.topMm + heightMm]
      const body = { id, plateId: under.piece.plateId, loops: under.loops, bottomMm, topMm }
      return [id, { body, region: under.region }] as const
    }),
  )
}

/** The plate with the area that somebody named to stay; null where none is named, or all of it bends. */
function findHeldPlate(plan: Plan, { pieces }: FlatPartOfPlan): string | null {
  const held = plan.housing?.heldAreaId ?? null
  if (held === null) return null
  const at = areasOf(plan).areas.findIndex(({ id }) => id === held)
  const own = pieces.filter(({ area }) => area === at)
  const [first, ...others] = own.map(({ plateId }) => plateId)
  // An area that a bend crosses lies in several plates: its largest piece is meant.
  if (first === undefined || others.every((plateId) => plateId === first)) return first ?? null
  return own.reduce((best, piece) => (piece.region.areaNm2 > best.region.areaNm2 ? piece : best)).plateId
}

function findLargestPlate({ pieces }: FlatPartOfPlan): string {
  const sizes = new Map<string, number>()
  for (const { plateId, region } of pieces) sizes.set(plateId, (sizes.get(plateId) ?? 0) + region.areaNm2)
  return [...sizes].sort(([a, one], [b, other]) => other - one || a.localeCompare(b))[0]?.[0] ?? ''
}
