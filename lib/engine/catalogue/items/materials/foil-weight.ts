import type { ConductorResult, MissingInput, Outcome } from '../../../results'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { cannotTellFrom, decide, makeDesignLimit, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'

/** Lightest foil on every fabricator's shelf, um: a need lighter than this does not make a heavier foil wrong. */
const LIGHTEST_ORDINARY_FOIL_UM = 12

export const foilWeight = defineItem({
  id: 'foil-weight',
  section: 'materials',
  severity: 'minor',
  question: 'Is every foil no heavier than needed?',
  titles: { meets: 'No foil is heavier than its currents ask for', fails: 'Foil heavier than any stated need' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors with what they carry' },
  limits: [],
  sourceKeys: ['ipc2221', 'commonPractice'],
  restsOn: ['construction.layers', 'features.conductors'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => {
    const outcomes: Outcome[] = []
    for (const layer of context.design.construction.layers) {
      if (layer.kind !== 'conductor') continue
      let neededUm = LIGHTEST_ORDINARY_FOIL_UM
      let isLoaded = false
      let hasImpedance = false
      let unknown: ConductorResult | null = null
      const missing: MissingInput[] = []
      context.design.features.conductors.forEach((conductor, index) => {
        if (conductor.layerId !== layer.id) return
        isLoaded = true
        if (conductor.impedanceOhm !== null) hasImpedance = true
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
          equation: 'lightest foil that carries the stated currents, not below 12 um',
          cautions: hasImpedance ? ['A lighter foil moves the stated impedance a little: check the width.'] : [],
        }),
      )
    }
    return outcomes.length === 0
      ? [
          notComputedFrom(
            [{ path: ['features', 'conductors'], label: 'conductors on any conductor layer' }],
            [DESIGN_PLACE],
          ),
        ]
      : outcomes
  },
})
