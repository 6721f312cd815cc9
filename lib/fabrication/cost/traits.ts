import { type Design, type Layer, withNetClasses } from '@/lib/engine'
import { type Demands, describeDemands } from './demands'

/** How exactly layers must meet one another, and with it how far panels, spacing and yield have to give way. */
export const REGISTRATION_DEMANDS = ['loose', 'ordinary', 'tight'] as const
export type RegistrationDemand = (typeof REGISTRATION_DEMANDS)[number]

export const COVERLAY_METHODS = ['drill', 'punch', 'laser'] as const
export type CoverlayMethod = (typeof COVERLAY_METHODS)[number]

/** Narrower strips of coverlay between openings ask for tight registration (common practice, no published source). */
const TIGHT_WEB_MM = 0.2

/** What the process steps of a construction depend on, counted from the design. */
export interface ConstructionTraits extends Demands {
  readonly isRigidFlex: boolean
  readonly conductorCount: number
  /** Conductor layers that run through a flexible zone and are the outermost copper of a rigid one. */
  readonly outerFlexCount: number
  readonly baseFilmCount: number
  readonly coverlayCount: number
  /** Coverlays that lie over an outer flexible layer and reach over the rigid area, where parts are soldered through them. */
  readonly coverlayOverOuterFlexCount: number
  /** How the other coverlays are opened; the design's openings decide, the dearest method of them counts. */
  readonly coverlayMethod: CoverlayMethod
  readonly isCoverlayMethodStated: boolean
  readonly coverlayOpeningCount: number
  readonly bondplyCount: number
  readonly prepregCount: number
  readonly rigidLaminateCount: number
  /** Rigid laminates that carry copper outside of flexible layers: their windows are routed before, their caps removed after. */
  readonly capCount: number
  readonly solderMaskCount: number
  readonly shieldCount: number
  readonly gapCount: number
  readonly stiffenerCount: number
  readonly platings: readonly ('panel' | 'pattern' | 'button')[]
  readonly coverlayPressCount: number
  readonly finalPressCount: number
  readonly stiffenerPressCount: number
  readonly finish: 'nickel' | 'other' | 'none' | 'not-stated'
  readonly isTested: boolean
  readonly hasCoupons: boolean
  /** Conductors whose impedance is stated with a coupon, by themselves or by their net class. */
  readonly couponLineCount: number
  readonly registration: RegistrationDemand
  /** Why registration is what it is. */
  readonly registrationBecause: string
}

/** Reads the traits off a design. Cheap: it only counts layers, zones and openings. */
export function describeConstruction(design: Design): ConstructionTraits {
  const { layers, zones } = design.construction
  const layersById = new Map(layers.map((layer) => [layer.id, layer]))
  const inKind = (kind: 'rigid' | 'flex') =>
    new Set(zones.filter((zone) => zone.kind === kind).flatMap((zone) => zone.presence.map(({ layerId }) => layerId)))
  const [rigidIds, flexIds] = [inKind('rigid'), inKind('flex')]
  const isRigidFlex = rigidIds.size > 0 && flexIds.size > 0
  const countKind = (kind: Layer['kind']) => layers.filter((layer) => layer.kind === kind).length
  const conductors = layers.filter((layer) => layer.kind === 'conductor')
  const rigidConductors = conductors.filter(({ id }) => rigidIds.has(id))
  const outer = [rigidConductors[0], rigidConductors.at(-1)].filter((layer) => layer !== undefined)
  const outerFlexCount = isRigidFlex ? new Set(outer.filter(({ id }) => flexIds.has(id)).map(({ id }) => id)).size : 0
  const coverlays = layers.filter(({ kind }) => kind === 'coverlay-film')
  const overOuterFlex =
    outerFlexCount === 0 ? 0 : coverlays.filter(({ id }) => rigidIds.has(id) && flexIds.has(id)).length
  const gapCount = countKind('unbonded-gap')
  const baseFilmCount = countKind('base-film')
  const bondplyCount = countKind('bondply')
  const prepregCount = countKind('no-flow-prepreg')
  const innerCoverlays = coverlays.length - overOuterFlex
  const stiffeners = design.features.stiffeners.length > 0 ? design.features.stiffeners.length : countKind('stiffener')
  const { coverlayOpenings } = design.features
  const stated = COVERLAY_METHODS.filter((method) => coverlayOpenings.some((opening) => opening.method === method))
  const couponLineCount = withNetClasses(design).features.conductors.filter(
    ({ impedanceOhm, impedance }) => impedanceOhm !== null && impedance.coupon === true,
  ).length
  return {
    isRigidFlex,
    conductorCount: conductors.length,
    outerFlexCount,
    baseFilmCount,
    coverlayCount: coverlays.length,
    coverlayOverOuterFlexCount: overOuterFlex,
    coverlayMethod: stated.at(-1) ?? 'drill',
    isCoverlayMethodStated: stated.length > 0,
    coverlayOpeningCount: coverlayOpenings.length,
    bondplyCount,
    prepregCount,
    rigidLaminateCount: countKind('rigid-laminate'),
    capCount: isRigidFlex ? countCaps(layers, layersById, rigidIds, flexIds) : 0,
    solderMaskCount: countKind('solder-mask'),
    shieldCount: countKind('shield-film'),
    gapCount,
    stiffenerCount: stiffeners,
    platings: (['panel', 'pattern', 'button'] as const).filter((process) =>
      conductors.some((layer) => layer.kind === 'conductor' && layer.plating.process === process),
    ),
    // Cores are covered one by one; coverlay over the outside goes on after everything else is pressed.
    coverlayPressCount:
      (innerCoverlays === 0 ? 0 : Math.min(innerCoverlays, Math.max(1, baseFilmCount))) + (overOuterFlex === 0 ? 0 : 1),
    finalPressCount: prepregCount + bondplyCount > 0 || isRigidFlex ? 1 : 0,
    stiffenerPressCount: stiffeners === 0 ? 0 : 1,
    finish: describeFinish(design.brief.surfaceFinish),
    ...describeDemands(design),
    isTested: design.brief.electricalTest !== false,
    hasCoupons: design.brief.couponTest === true || couponLineCount > 0,
    couponLineCount,
    ...decideRegistration(design, overOuterFlex, isRigidFlex, conductors.length),
  }
}

/** Rigid laminates outside of all flexible layers, above them or below them. */
function countCaps(
  layers: readonly Layer[],
  layersById: ReadonlyMap<string, Layer>,
  rigidIds: ReadonlySet<string>,
  flexIds: ReadonlySet<string>,
): number {
  const flexAt = layers.flatMap(({ id }, at) =>
    flexIds.has(id) && layersById.get(id)?.kind === 'conductor' ? [at] : [],
  )
  const [first, last] = [flexAt[0] ?? 0, flexAt.at(-1) ?? layers.length]
  return layers.filter(
    ({ id, kind }, at) =>
      kind === 'rigid-laminate' && rigidIds.has(id) && !flexIds.has(id) && (at < first || at > last),
  ).length
}

function describeFinish(finish: Design['brief']['surfaceFinish']): ConstructionTraits['finish'] {
  if (finish === null) return 'not-stated'
  if (finish === 'none') return 'none'
  return finish.includes('nickel') ? 'nickel' : 'other'
}

function decideRegistration(
  design: Design,
  coverlayOverOuterFlexCount: number,
  isRigidFlex: boolean,
  conductorCount: number,
): Pick<ConstructionTraits, 'registration' | 'registrationBecause'> {
  if (coverlayOverOuterFlexCount > 0) {
    return {
      registration: 'tight',
      registrationBecause:
        'Coverlay over the outer flexible layers is opened over lands that have already moved in the press.',
    }
  }
  const narrow = design.features.coverlayOpenings.find(({ webMm }) => webMm !== null && webMm < TIGHT_WEB_MM)
  if (narrow !== undefined) {
    return {
      registration: 'tight',
      registrationBecause: `“${narrow.name}” leaves a coverlay web of ${narrow.webMm} mm, narrower than ${TIGHT_WEB_MM} mm.`,
    }
  }
  if (isRigidFlex || conductorCount > 2) {
    return {
      registration: 'ordinary',
      registrationBecause: isRigidFlex
        ? 'Flexible layers lie inside the rigid ones; their coverlay only has to reach under the rigid edge.'
        : 'More than two conductor layers meet in one press.',
    }
  }
  return {
    registration: 'loose',
    registrationBecause: 'At most two conductor layers share one base film: only coverlay and holes have to meet them.',
  }
}
