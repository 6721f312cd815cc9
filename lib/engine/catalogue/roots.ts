import { CONDUCTOR_COUNT_FACT } from '../artwork-check'
import type { EvaluationContext } from '../context'
import type { Design } from '../design'
import type { Outcome, Place } from '../results'
import { keepFewConductorLayers, leavePlatingOut, plateWalls } from './root-mending'

/**
 * Causes that several items share. Where items fail at one place by one cause, the root item is the failure and the others follow from it.
 * Which cause brings which failures is common practice, no published source; that it does so in the design at hand is tried where `mend` is given.
 */
export interface Root {
  /** The item that names the cause itself. */
  readonly itemId: string
  /** As a clause: `the bend is too tight for its section`. */
  readonly cause: string
  readonly followers: readonly Follower[]
  /**
   * Designs in which the cause is gone at the places of these outcomes of the root, each a way to do it: only what no longer fails in one of them follows
   * from the root. Without it, a common place is enough.
   */
  readonly mend?: (context: EvaluationContext, failed: readonly Outcome[]) => readonly Design[]
}

export interface Follower {
  readonly itemId: string
  /** Kind of place that both must name. A bend also names its zone. */
  readonly at: Place['kind']
  /** In place of a common place, where the follower names none that the root does. */
  readonly isFrom?: (context: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]) => boolean
}

const AT_BEND: readonly Follower[] = [
  { itemId: 'copper-yield', at: 'bend' },
  { itemId: 'film-strain', at: 'bend' },
  { itemId: 'radius-rules', at: 'bend' },
]

const BY_SECTION: readonly Follower[] = [
  { itemId: 'bend-strain', at: 'bend' },
  { itemId: 'fatigue-life', at: 'bend' },
  { itemId: 'damage-sum', at: 'layer', isFrom: isDamageOfBends },
  ...AT_BEND,
  { itemId: 'neutral-axis', at: 'bend' },
]

/** Causes before their effects: an item follows from the first that fits. */
export const ROOTS: readonly Root[] = [
  {
    itemId: 'plating-in-bend',
    cause: 'copper is plated into the bend',
    followers: [
      ...BY_SECTION,
      { itemId: 'coverlay-adhesive', at: 'zone' },
      { itemId: 'conductor-width', at: 'conductor', isFrom: isOnLayerOf },
      { itemId: 'conductor-space', at: 'conductor', isFrom: isOnLayerOf },
    ],
    mend: leavePlatingOut,
  },
  {
    itemId: 'conductor-layers-in-bend',
    cause: 'the bend carries too many conductor layers',
    followers: [...BY_SECTION, { itemId: 'unbonded-leaves', at: 'bend' }],
    mend: keepFewConductorLayers,
  },
  {
    itemId: 'fatigue-life',
    cause: 'the bend is too tight for its section',
    followers: [{ itemId: 'damage-sum', at: 'layer', isFrom: isDamageOfBends }, ...AT_BEND],
  },
  {
    itemId: 'bend-strain',
    cause: 'the bend is too tight for its section',
    followers: AT_BEND,
  },
  {
    itemId: 'bend-cover',
    cause: 'no film covers the copper of the bend',
    followers: [
      { itemId: 'solder-mask-in-bend', at: 'bend', isFrom: isMaskInPlaceOfFilm },
      { itemId: 'surface-finish', at: 'bend' },
    ],
  },
  {
    itemId: 'opening-to-bend',
    cause: 'an opening lies in or too near a bend',
    followers: [
      { itemId: 'surface-finish', at: 'coverlay-opening' },
      { itemId: 'straight-film', at: 'coverlay-opening' },
      { itemId: 'component-to-bend', at: 'component', isFrom: isBehindOpening },
      { itemId: 'coverlay-edge-in-bend', at: 'routing', isFrom: isEdgeOfOpening },
    ],
  },
  {
    itemId: 'holes-in-flex',
    cause: 'a plated hole lies in film that moves',
    followers: [{ itemId: 'hole-to-bend', at: 'hole' }],
  },
  {
    itemId: 'hole-plating',
    cause: 'the wall of the hole is too thin',
    followers: [{ itemId: 'hole-life', at: 'hole' }],
    mend: plateWalls,
  },
  {
    itemId: 'finger-support',
    cause: 'the connector end has no stiffener',
    followers: [{ itemId: 'finger-thickness', at: 'zone', isFrom: isThinWithoutStiffener }],
  },
  {
    itemId: 'stack-symmetry',
    cause: 'the zone is not alike above and below',
    followers: [{ itemId: 'thermal-curl', at: 'zone' }],
  },
  {
    itemId: 'tolerances-given',
    cause: 'the tolerance on the drawing is less than the layers vary',
    followers: [
      { itemId: 'fitted-thickness', at: 'zone' },
      { itemId: 'thickness-tolerance', at: 'zone' },
    ],
  },
  {
    itemId: 'coverlay-opening',
    cause: 'the opening is too small',
    followers: [{ itemId: 'open-land', at: 'coverlay-opening' }],
  },
  {
    itemId: 'bend-use',
    cause: 'the stated uses are not what the part does',
    followers: [{ itemId: 'flame-class', at: 'brief', isFrom: isFlameUse }],
  },
  {
    itemId: 'package-contents',
    cause: 'the artwork lacks a file',
    followers: [{ itemId: 'artwork-agreement', at: 'layer', isFrom: isCountOfMissing }],
  },
  {
    itemId: 'corner-radius',
    cause: 'the corner is too sharp',
    followers: [{ itemId: 'tear-stop', at: 'corner' }],
  },
]

/** Items that may follow from another, each with the roots it may follow from, in their order. */
export function listRootsOf(itemId: string): readonly Root[] {
  return ROOTS.filter(({ followers }) => followers.some((follower) => follower.itemId === itemId))
}

/** The cause that an item names where it fails, as a clause; null for an item that is no root. */
export function describeRootCause(itemId: string): string | null {
  return ROOTS.find((root) => root.itemId === itemId)?.cause ?? null
}

/** Would the sum of the other bends alone hold? Then those that fail bring the failure. */
function isDamageOfBends(context: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]): boolean {
  const layerId = outcome.places.find(({ kind }) => kind === 'layer')?.id
  const damage = context.damage.find(({ conductorLayerId }) => conductorLayerId === layerId)
  if (damage === undefined) return false
  const failing = new Set(listIds(failed, 'bend'))
  const rest = damage.contributions.reduce((sum, share) => sum + (failing.has(share.bendId) ? 0 : share.damage), 0)
  const isOfFailing = damage.contributions.some((share) => failing.has(share.bendId) && share.damage > 0)
  return isOfFailing && rest <= context.getLimit('damageSumFraction').value
}

/** Does the conductor run on a layer that the root names? */
function isOnLayerOf({ design }: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]): boolean {
  const layerIds = new Set(listIds(failed, 'layer'))
  const conductorIds = listIds([outcome], 'conductor')
  const conductors = design.features.conductors.filter(({ id }) => conductorIds.includes(id))
  return conductors.length > 0 && conductors.every(({ layerId }) => layerId !== null && layerIds.has(layerId))
}

/** Is each mask of the bend on copper that `bend-cover` found bare, so that film in its place mends both? */
function isMaskInPlaceOfFilm(context: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]): boolean {
  const bendIds = listIds([outcome], 'bend')
  const bareIds = new Set(
    listIds(
      failed.filter((other) => bendIds.every((id) => listIds([other], 'bend').includes(id))),
      'layer',
    ),
  )
  const zoneId = context.design.bends.find(({ id }) => id === bendIds[0])?.zoneId
  const layers = zoneId == null ? [] : (context.findZoneResult(zoneId)?.layers ?? [])
  const masks = layers.flatMap((layer, index) => (layer.kind === 'solder-mask' ? [index] : []))
  return (
    bareIds.size > 0 &&
    masks.length > 0 &&
    masks.every((index) =>
      [layers[index - 1], layers[index + 1]].some((beside) => beside !== undefined && bareIds.has(beside.layerId)),
    )
  )
}

/** A component sits in its opening: one that is no nearer to the bend than a failing opening moves away with it. */
function isBehindOpening(_: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]): boolean {
  if (outcome.kind !== 'decided') return false
  const [bendId] = listIds([outcome], 'bend')
  return failed.some(
    (other) =>
      other.kind === 'decided' &&
      bendId !== undefined &&
      listIds([other], 'bend').includes(bendId) &&
      other.value.value <= outcome.value.value,
  )
}

/** The edge of an opening that lies in a bend is an edge of coverlay in that bend. */
function isEdgeOfOpening(_: EvaluationContext, __: Outcome, failed: readonly Outcome[]): boolean {
  return failed.some((other) => other.kind === 'decided' && other.value.value === 0)
}

/** Without a stiffener an end is too thin; one that is too thick fails by itself. */
function isThinWithoutStiffener(_: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]): boolean {
  const bare = failed.filter((other) => other.kind === 'decided' && other.limit.key === 'fingerStiffenersCount')
  const zoneIds = new Set(listIds(bare, 'zone'))
  return (
    outcome.kind === 'decided' &&
    outcome.decidingEnd?.end === 'lower' &&
    listIds([outcome], 'zone').every((id) => zoneIds.has(id))
  )
}

/** Use D is stated and no flame class is asked for: both items say so. */
function isFlameUse({ design: { brief } }: EvaluationContext): boolean {
  return brief.acceptance.flameClass === 'not-asked' && brief.installationUses.includes('use-d')
}

/** Fewer files of copper than layers: each layer without one is named by the root. */
function isCountOfMissing({ design }: EvaluationContext, outcome: Outcome, failed: readonly Outcome[]): boolean {
  const conductors = design.construction.layers.filter(({ kind }) => kind === 'conductor').map(({ id }) => id)
  return (
    outcome.kind === 'decided' &&
    outcome.summary.startsWith(`${CONDUCTOR_COUNT_FACT}:`) &&
    listIds(failed, 'layer').some((id) => conductors.includes(id))
  )
}

function listIds(outcomes: readonly Outcome[], kind: Place['kind']): string[] {
  return outcomes.flatMap(({ places }) => places.flatMap((place) => (place.kind === kind ? [place.id] : [])))
}
