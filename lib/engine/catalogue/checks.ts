import type { EvaluationContext } from '../context'
import { type Bend, CLEAR_OF_BENDS_MM, callByName, listStiffeners } from '../design'
import {
  type BendResult,
  type Limit,
  type Outcome,
  type Place,
  placeOf,
  type QuantityRange,
  type SaidOutcome,
  type ZoneResult,
} from '../results'
import type { SourceKey } from '../sources'
import { decide, makeNoneAllowed, notComputed, notComputedFrom } from './decide'
import { sourceOf } from './drawn'

type FeatureList =
  | 'holes'
  | 'pads'
  | 'outlineCorners'
  | 'widthSteps'
  | 'coverlayOpenings'
  | 'stiffeners'
  | 'slits'
  | 'components'
  | 'conductors'

const PLACE_KINDS: Record<FeatureList, Place['kind']> = {
  holes: 'hole',
  pads: 'pad',
  outlineCorners: 'corner',
  widthSteps: 'width-step',
  coverlayOpenings: 'coverlay-opening',
  stiffeners: 'stiffener',
  slits: 'slit',
  components: 'component',
  conductors: 'conductor',
}

type FeatureOf<K extends FeatureList> = EvaluationContext['design']['features'][K][number]

/** Stiffeners are those of the construction; the others are listed as they are. */
function listFeatures<K extends FeatureList>({ design }: EvaluationContext, list: K): readonly FeatureOf<K>[] {
  // The compiler does not narrow K by the value of `list`.
  return (list === 'stiffeners' ? listStiffeners(design) : design.features[list]) as readonly FeatureOf<K>[]
}

/**
 * One outcome per listed feature: a typed dimension against a limit. A dimension that is not known yet is named by
 * its path.
 */
export function checkDimension<K extends FeatureList>(
  context: EvaluationContext,
  options: {
    list: K
    /** Field that holds the dimension. */
    field: string & keyof FeatureOf<K>
    /** In words, with the feature's name: `inside radius of Notch`. */
    what: (name: string) => string
    read: (feature: FeatureOf<K>) => number | null
    /** One for all, or the feature's own; what it then says beside the comparison. */
    limit: Limit | ((feature: FeatureOf<K>) => { readonly limit: Limit; readonly remark?: string })
    equation: string
    when?: (feature: FeatureOf<K>) => boolean
    /** What must be known before the dimension is looked at; null where it is. */
    findUnknown?: (
      feature: FeatureOf<K>,
    ) => { readonly field: string & keyof FeatureOf<K>; readonly label: string } | null
    cautions?: (feature: FeatureOf<K>) => readonly string[]
    sourceKey?: SourceKey
  },
): Outcome[] {
  const { list, field, what, read, limit, equation, when, findUnknown, cautions, sourceKey } = options
  const features = listFeatures(context, list)
  const outcomes: Outcome[] = []
  features.forEach((feature, index) => {
    if (when !== undefined && !when(feature)) return
    const places = [placeOf(PLACE_KINDS[list], feature)]
    const unknown = findUnknown?.(feature) ?? null
    if (unknown !== null) {
      outcomes.push(notComputed(['features', list, index, unknown.field], unknown.label, places, 'typed'))
      return
    }
    const value = read(feature)
    const own = typeof limit === 'function' ? limit(feature) : { limit }
    outcomes.push(
      value === null
        ? notComputed(['features', list, index, field], what(feature.name), places, 'typed')
        : decide({
            value,
            ...own,
            places,
            what: what(feature.name),
            ...sourceOf(context, ['features', list, index, field], equation),
            ...(cautions === undefined ? {} : { cautions: cautions(feature) }),
            ...(sourceKey === undefined ? {} : { sourceKey }),
          }),
    )
  })
  return outcomes
}

/** Distance of each listed feature from its nearest bend. */
export function checkDistanceToBend<
  K extends 'holes' | 'pads' | 'widthSteps' | 'coverlayOpenings' | 'stiffeners' | 'components',
>(
  context: EvaluationContext,
  options: { list: K; limit: Limit; when?: (feature: FeatureOf<K>) => boolean },
): Outcome[] {
  const features = listFeatures(context, options.list)
  const outcomes: Outcome[] = []
  features.forEach((feature, index) => {
    if (options.when !== undefined && !options.when(feature)) return
    const place = placeOf(PLACE_KINDS[options.list], feature)
    const nearest = feature.nearestBend
    if (nearest === null && 'clearOfBends' in feature && feature.clearOfBends === true) {
      outcomes.push(decideClear(feature.name, place, options.limit, ['features', options.list, index, 'nearestBend']))
      return
    }
    if (nearest === null) {
      outcomes.push(
        notComputed(
          ['features', options.list, index, 'nearestBend'],
          `distance of ${feature.name} from the nearest bend`,
          [place],
          'typed',
        ),
      )
      return
    }
    const bend = context.design.bends.find((candidate) => candidate.id === nearest.bendId)
    const bendName = bend?.name ?? nearest.bendId
    if (nearest.distanceMm === null) {
      outcomes.push(
        notComputed(
          ['features', options.list, index, 'nearestBend', 'distanceMm'],
          `distance of ${feature.name} from ${callByName('bend', bendName)}`,
          [place, { kind: 'bend', id: nearest.bendId, name: bendName }],
          'typed',
        ),
      )
      return
    }
    outcomes.push(
      decide({
        value: nearest.distanceMm,
        limit: options.limit,
        places: [place, { kind: 'bend', id: nearest.bendId, name: bendName }],
        what: `${feature.name} to ${callByName('bend', bendName)}`,
        ...sourceOf(
          context,
          ['features', options.list, index, 'nearestBend', 'distanceMm'],
          'distance in the flat part',
        ),
      }),
    )
  })
  return outcomes
}

/** Said to lie far off: that is an answer as far as it reaches. */
function decideClear(name: string, place: Place, limit: Limit, path: readonly (string | number)[]): Outcome {
  if (limit.value > CLEAR_OF_BENDS_MM)
    return notComputed(path, `distance of ${name} from the nearest bend`, [place], 'typed')
  return decide({
    value: CLEAR_OF_BENDS_MM,
    bound: 'more-than',
    limit,
    places: [place],
    what: `${name} to the nearest bend`,
    equation: 'stated: no bend within 5 mm',
    isTyped: true,
  })
}

/**
 * Something that a person has looked at and recorded as so or not so, or a term that the design sets. It has no figure and no limit, and says
 * so: what was recorded, in words.
 */
export function checkObserved(options: {
  observed: boolean | null
  /** The recorded value that is right. */
  wanted: boolean
  path: readonly (string | number)[]
  /** In words, for "is missing": `whether conductors turn in curves`. */
  label: string
  whenRight: string
  whenWrong: string
  places: readonly Place[]
  sourceKey: SourceKey
  /** `typed` for a term of the design, which is so because it is written; an observation is `stated`. */
  rests?: SaidOutcome['rests']
}): Outcome {
  const { observed, wanted, path, label, whenRight, whenWrong, places, sourceKey, rests = 'stated' } = options
  if (observed === null) return notComputed(path, label, places, rests)
  const isRight = observed === wanted
  return {
    kind: 'said',
    verdict: isRight ? 'meets' : 'fails',
    rests,
    sourceKey,
    places,
    summary: isRight ? whenRight : whenWrong,
  }
}

/**
 * Whether a drawing shows something. The sheet that is made from the design is read from its own contents; a person's "no" about a drawing of the
 * team's own goes before it. Without the sheet at hand the recorded observation is all that there is.
 */
export function checkDrawingSheet(
  { facts }: EvaluationContext,
  of: keyof NonNullable<EvaluationContext['facts']['sheetLacks']>,
  observed: Parameters<typeof checkObserved>[0],
  /** Only of the entry with this name. */
  name?: string,
): Outcome {
  const lacks = facts.sheetLacks?.[of].filter((lack) => name === undefined || isOf(name, lack))
  if (lacks === undefined || observed.observed === false) return checkObserved(observed)
  return decide({
    value: lacks.length,
    limit: makeNoneAllowed('sheetLacksCount', 'ownChoice'),
    places: observed.places,
    what: 'entries that the drawing sheet leaves open',
    equation: 'contents of the drawing sheet',
    remark: lacks.length === 0 ? undefined : `Open: ${lacks.join('; ')}.`,
  })
}

/** `Stiffener (2) (held by)` is of "Stiffener (2)", and not of "Stiffener". */
const isOf = (name: string, lack: string): boolean =>
  lack.startsWith(`${name} (`) && !lack.slice(name.length).includes(') (')

export interface BendUnderCheck {
  readonly bend: Bend
  readonly result: BendResult
  readonly zone: ZoneResult | null
  readonly index: number
  readonly place: Place
}

/** Bends with their results, in the design's order. */
export function listBends(context: EvaluationContext, when?: (bend: Bend) => boolean): BendUnderCheck[] {
  const found: BendUnderCheck[] = []
  context.design.bends.forEach((bend, index) => {
    if (when !== undefined && !when(bend)) return
    const result = context.findBendResult(bend.id)
    if (result === null) return
    found.push({ bend, result, zone: context.findZoneResult(bend.zoneId), index, place: placeOf('bend', bend) })
  })
  return found
}

/** Outcomes of the dynamic bends; of a bend whose use nobody stated, that it is missing. */
export function checkDynamicBends(
  context: EvaluationContext,
  check: (bend: BendUnderCheck) => Outcome | readonly Outcome[],
): Outcome[] {
  return listBends(context).flatMap((bend): Outcome | readonly Outcome[] => {
    if (bend.bend.use === null) return notComputedUse(bend)
    return isDynamic(bend.bend) ? (notComputedSection(bend) ?? check(bend)) : []
  })
}

/** Of a bend whose section nobody knows, that it is missing: it may hold anything. Null where the section is known. */
export function notComputedSection({ bend, result, index, place }: Omit<BendUnderCheck, 'zone'>): Outcome | null {
  if (result.leaves.length > 0) return null
  return result.missing.length > 0
    ? notComputedFrom(result.missing, [place])
    : notComputed(['bends', index, 'zoneId'], `layers of ${callByName('bend', bend.name)}`, [place])
}

/** The same for what counts layers alone: which layers there are is known although a constant of one is not. */
export function notComputedLayers(checked: BendUnderCheck): Outcome | null {
  return checked.zone === null || checked.zone.layers.length === 0 ? notComputedSection(checked) : null
}

export function notComputedUse({ bend, index, place }: BendUnderCheck): Outcome {
  return notComputed(['bends', index, 'use'], `use of ${callByName('bend', bend.name)}`, [place])
}

export const isDynamic = (bend: Bend): boolean => bend.use === 'dynamic'

/** The formed radius over its tolerance. */
export function getRadiusRangeMm(bend: Bend): QuantityRange {
  return { low: bend.insideRadiusMm - bend.radiusToleranceMm, high: bend.insideRadiusMm + bend.radiusToleranceMm }
}

export { BRIEF_PLACE, DESIGN_PLACE, placeOf, ROUTING_PLACE } from '../results'
