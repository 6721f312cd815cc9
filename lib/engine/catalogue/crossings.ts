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
 * Layers with copper in bends that no conductor of theirs is listed as crossing, each with those bends. The section of a zone is what its bends bend, so
 * copper in it crosses their axis; a layer whose copper ends before the bend has coverage 0 in that zone. Where no crossing is listed at all, the list
 * itself is open.
 */
export function listUncrossedLayers({ design, findZoneResult }: EvaluationContext): UncrossedLayer[] {
  const { conductors } = design.features
  if (conductors.every(({ crossings }) => crossings.length === 0)) return []
  return design.construction.layers.flatMap((layer): UncrossedLayer[] => {
    if (layer.kind !== 'conductor' || layer.role === 'plane') return []
    const listed = conductors.filter(({ layerId }) => layerId === layer.id)
    const crossed = new Set(listed.flatMap(({ crossings }) => crossings.map(({ bendId }) => bendId)))
    const bends = design.bends.filter(
      ({ id, zoneId }) =>
        !crossed.has(id) &&
        findZoneResult(zoneId)?.layers.some((each) => each.layerId === layer.id && hasCopper(each)) === true,
    )
    if (bends.length === 0) return []
    const names = bends.map(({ name }) => name).join(', ')
    const [first] = listed
    return [
      {
        missing: {
          path:
            first === undefined
              ? ['features', 'conductors']
              : ['features', 'conductors', conductors.indexOf(first), 'crossings'],
          label: `which conductor of ${layer.name} crosses ${names}`,
        },
        places: [placeOf('layer', layer), ...bends.map((bend) => placeOf('bend', bend))],
        because: `${layer.name} has copper in ${names}, and no conductor of it is listed as crossing there; copper that ends before a bend has coverage 0 in its zone`,
      },
    ]
  })
}
