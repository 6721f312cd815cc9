import type { EvaluationContext } from '../context'
import type { ConductorFeature } from '../design'
import type { MissingInput, Outcome, Place } from '../results'
import { placeOf } from './checks'
import { notComputedFrom } from './decide'
import { hasCopper } from './needs'

export interface CrossingUnderCheck {
  readonly conductor: ConductorFeature
  readonly crossing: ConductorFeature['crossings'][number]
  readonly bendName: string
  readonly path: readonly (string | number)[]
  readonly places: readonly Place[]
}

/** One outcome for each conductor at each bend that it crosses. */
export function checkCrossings(
  context: EvaluationContext,
  check: (crossing: CrossingUnderCheck) => Outcome,
): Outcome[] {
  const outcomes: Outcome[] = listUncrossedLayers(context).map(({ missing, places }) =>
    notComputedFrom([missing], places),
  )
  context.design.features.conductors.forEach((conductor, index) => {
    conductor.crossings.forEach((crossing, at) => {
      const bend = context.design.bends.find((candidate) => candidate.id === crossing.bendId)
      const bendName = bend?.name ?? crossing.bendId
      outcomes.push(
        check({
          conductor,
          crossing,
          bendName,
          path: ['features', 'conductors', index, 'crossings', at],
          places: [placeOf('conductor', conductor), { kind: 'bend', id: crossing.bendId, name: bendName }],
        }),
      )
    })
  })
  return outcomes
}

interface UncrossedLayer {
  readonly missing: MissingInput
  readonly places: readonly Place[]
  /** At the start of a sentence, without its end. */
  readonly because: string
}

/**
 * Layers with copper through a bend of which no listed conductor crosses any bend: something does. Where one of the layer crosses, the rest may lie
 * beside. Where no crossing is listed at all, the list itself is open.
 */
export function listUncrossedLayers({ design, findZoneResult }: EvaluationContext): UncrossedLayer[] {
  const { conductors } = design.features
  if (conductors.every(({ crossings }) => crossings.length === 0)) return []
  return design.construction.layers.flatMap((layer): UncrossedLayer[] => {
    if (layer.kind !== 'conductor' || layer.role === 'plane') return []
    const listed = conductors.filter(({ layerId }) => layerId === layer.id)
    const [first] = listed
    if (first === undefined || listed.some(({ crossings }) => crossings.length > 0)) return []
    const bend = design.bends.find(({ zoneId }) =>
      findZoneResult(zoneId)?.layers.some((each) => each.layerId === layer.id && hasCopper(each)),
    )
    if (bend === undefined) return []
    return [
      {
        missing: {
          path: ['features', 'conductors', conductors.indexOf(first), 'crossings'],
          label: `which conductor of ${layer.name} crosses ${bend.name}`,
        },
        places: [placeOf('layer', layer), placeOf('bend', bend)],
        because: `${layer.name} has copper in ${bend.name}, and no conductor of it is listed as crossing a bend`,
      },
    ]
  })
}
