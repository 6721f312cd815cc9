import type { EvaluationContext } from '../../../context'
import type { ConductorResult, MissingInput, Outcome } from '../../../results'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { cannotTellFrom, decide, makeDesignLimit, notApplicable, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

/**
 * Lightest foil that is ordinary everywhere, um: a need lighter than this does not make it wrong. Half an ounce; fabricators hold lighter foil, not
 * all of them. Common practice, no published source.
 */
const LIGHTEST_ORDINARY_FOIL_UM = 17.1

export const foilWeight = defineItem({
  id: 'foil-weight',
  section: 'materials',
  severity: 'advice',
  question: 'Is every foil that bends no heavier than needed?',
  titles: { meets: 'No foil is heavier than its currents need', fails: 'Foil heavier than any stated need' },
  appliesTo: { needs: ['bends', 'conductors'], says: 'designs with a bend that list conductors with what they carry' },
  limits: [],
  sourceKeys: ['ipc2221', 'commonPractice'],
  restsOn: ['construction.layers', 'construction.zones', 'bends.*.zoneId', 'features.conductors'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => {
    const outcomes: Outcome[] = []
    const floorUm = context.facts.lightestHeldFoilUm ?? LIGHTEST_ORDINARY_FOIL_UM
    const bent = listBentLayers(context)
    for (const layer of context.design.construction.layers) {
      if (layer.kind !== 'conductor' || !bent.has(layer.id)) continue
      let neededUm = floorUm
      let isLoaded = false
      let hasImpedance = false
      let unknown: ConductorResult | null = null
      const missing: MissingInput[] = []
      context.design.features.conductors.forEach((conductor, index) => {
        if (conductor.layerId !== layer.id) return
        isLoaded = true
        if (conductor.impedanceOhm !== null) hasImpedance = true
        // A signal that carries no power asks for no foil.
        if (conductor.carriesPower === false && conductor.currentAmp === null) return
        const result = context.conductors[index]
        if (result === undefined) return
        if (result.cannotTell !== null) unknown = result
        if (result.lightestFoilUm === null) {
          missing.push(...result.missing)
          // No ordinary foil carries that current: whatever is there is not too heavy.
          const isOverloaded = (conductor.currentAmp ?? 0) > 0 && result.missing.length === 0
          if (isOverloaded) neededUm = Math.max(neededUm, layer.thicknessUm)
        } else neededUm = Math.max(neededUm, result.lightestFoilUm)
      })
      if (!isLoaded) continue
      const places = [placeOf('layer', layer)]
      if (unknown !== null) {
        outcomes.push(cannotTellFrom(unknown, `the foil of ${layer.name}`, places))
        continue
      }
      if (missing.length > 0) {
        outcomes.push(notComputedFrom(missing, places))
        continue
      }
      outcomes.push(
        decide({
          value: layer.thicknessUm,
          limit: makeDesignLimit({
            key: 'neededFoilUm',
            value: neededUm,
            unit: 'um',
            sense: 'at-most',
            sourceKey: 'ipc2221',
            name: 'stated currents',
          }),
          places,
          what: `foil of ${layer.name}`,
          equation:
            'lightest foil that carries the stated currents, not below the lightest on the shelf (else 17.1 um)',
          cautions: hasImpedance ? ['A lighter foil moves the stated impedance a little: check the width.'] : [],
        }),
      )
    }
    if (bent.size === 0) return [notApplicable('no copper runs through a bend')]
    return outcomes.length === 0
      ? [
          notComputedFrom(
            [{ path: ['features', 'conductors'], label: 'conductors on any layer that bends' }],
            [DESIGN_PLACE],
          ),
        ]
      : outcomes
  },
})

/** Layers with copper in a zone that bends. */
function listBentLayers({ design, findZoneResult }: EvaluationContext): Set<string> {
  const zoneIds = new Set(design.bends.map(({ zoneId }) => zoneId))
  return new Set([...zoneIds].flatMap((id) => listConductorLayers(findZoneResult(id)).map(({ layerId }) => layerId)))
}
