import {
  type BodyFace,
  type ExactSolid,
  type FoldedBody,
  type LeafOf,
  listExactSolids,
  listFoldedBodies,
} from '@/lib/fold'
import type { Design, ZONE_KINDS } from '../design'
import type { Place } from '../results'
import { inSentence } from '../units'
import type { FoldableDesign } from './fold-design'
import { hasSlack } from './leaf-runs'
import { placeOfBody } from './named-bodies'

/** What a body of the folded part is made as. */
export type ShapeRole = (typeof ZONE_KINDS)[number] | 'bend' | 'component'

/** A closed body of the folded part, millimetres. The plate that stays lies in its own plane, its top face up. */
export interface ShapeBody {
  readonly id: string
  readonly role: ShapeRole
  /** As the design calls it. */
  readonly name: string
  readonly faces: readonly BodyFace[]
}

/** One step of the fold: a bend, all places of which bend together. */
export interface FoldStep {
  readonly bendId: string
  readonly name: string
  readonly angleDeg: number
}

/** The bends in the order in which the design lists them. */
export function listFoldSteps({ bends }: Design, { order, flat }: FoldableDesign): readonly FoldStep[] {
  return order.flatMap(([band]) => {
    const bend = bends.find(({ id }) => id === flat.bendOfBand.get(band ?? ''))
    return bend === undefined ? [] : [{ bendId: bend.id, name: bend.name, angleDeg: bend.angleDeg }]
  })
}

/**
 * The part as it stands after so many steps of its fold.
 *
 * @param steps  0 flat, as many as there are steps folded whole; 1.5 is the first bend made, the second halfway
 * @param stripDeg  turn of one strip of a bend
 */
export function shapeFold(
  design: Design,
  folding: FoldableDesign,
  steps: number,
  stripDeg?: number,
): readonly ShapeBody[] {
  const { flat, carried, fixedPlateId } = folding
  return listFoldedBodies(flat.part, carried, fixedPlateId, sharesAt(folding, steps), stripDeg).map((body) => {
    const place = placeOfBody(design, flat, body.solidId)
    return {
      id: body.id,
      role: roleOf(design, body, place.id),
      name: nameLeaf(place, body, folding),
      faces: body.faces,
    }
  })
}

/** A body with its true surfaces, as exchange formats of solid modelling take it. */
export interface NamedSolid {
  readonly solid: ExactSolid
  readonly name: string
  readonly role: ShapeRole
}

/**
 * The part as it stands after so many steps of its fold, bounded by planes, cylinders and the straight lines between two curves.
 *
 * @param steps  as `shapeFold`
 */
export function listSolids(design: Design, folding: FoldableDesign, steps: number): readonly NamedSolid[] {
  const { flat, carried, fixedPlateId, regions } = folding
  const bands = new Set(flat.part.bands.map(({ id }) => id))
  const standing = new Set(carried.map(({ id }) => id))
  return listExactSolids(flat.part, carried, regions, fixedPlateId, sharesAt(folding, steps)).map((solid) => {
    const place = placeOfBody(design, flat, solid.solidId)
    const kind = bands.has(solid.solidId) ? 'band' : standing.has(solid.solidId) ? 'carried' : 'plate'
    return { solid, name: nameLeaf(place, solid, folding), role: roleOf(design, { kind }, place.id) }
  })
}

/** `Hinge, leaf 2, 0.314 mm longer than its path`: leaves count from the top face down. */
function nameLeaf({ id, name }: Place, { leaf }: LeafOf, { leafRuns }: FoldableDesign): string {
  if (leaf === null) return name
  const slackMm = leafRuns.find(({ bendIds }) => bendIds.includes(id ?? ''))?.slackMm[leaf - 1] ?? 0
  const over = hasSlack(slackMm) ? `, ${inSentence(slackMm, 'mm')} longer than its path` : ''
  return `${name}, leaf ${leaf}${over}`
}

const sharesAt = ({ order }: FoldableDesign, steps: number) =>
  new Map(order.flatMap((bands, at) => bands.map((id) => [id, Math.min(1, Math.max(0, steps - at))] as const)))

function roleOf({ construction }: Design, { kind }: Pick<FoldedBody, 'kind'>, placeId: string): ShapeRole {
  if (kind === 'band') return 'bend'
  if (kind === 'carried') return 'component'
  return construction.zones.find(({ id }) => id === placeId)?.kind ?? 'rigid'
}
