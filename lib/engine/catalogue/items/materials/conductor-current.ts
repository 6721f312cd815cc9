import { placeOf } from '../../checks'
import { cannotTellFrom, decide, makeDesignLimit, notApplicable, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

export const conductorCurrent = defineItem({
  id: 'conductor-current',
  section: 'materials',
  severity: 'major',
  question: 'Does each conductor carry its current within the allowed temperature rise?',
  titles: { meets: 'Conductors carry their currents', fails: 'A conductor is too small for its current' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors with what they carry' },
  limits: [],
  sourceKeys: ['ipc2221', 'ipc2152'],
  restsOn: [...SECTION_INPUTS, 'features.conductors', ...TEMPERATURE_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [
    { path: 'features.conductors[].currentAmp', worse: 'larger' },
    { path: 'features.conductors[].widthMm', worse: 'smaller' },
    { path: 'features.conductors[].allowedRiseDegC', worse: 'smaller' },
    ...WIDER_TOLERANCES,
  ],
  check: (context) =>
    context.design.features.conductors.map((conductor, index) => {
      const result = context.conductors[index]
      const places = [placeOf('conductor', conductor)]
      const at = (field: string) => ['features', 'conductors', index, field]
      const { currentAmp } = conductor
      const capacityAmp = result?.capacityAmp ?? null
      if (result !== undefined && result.cannotTell !== null) {
        return cannotTellFrom(result, `the current of ${conductor.name}`, places)
      }
      if (conductor.carriesPower === false && currentAmp === null) {
        return notApplicable(`${conductor.name} is stated to carry no power`, places)
      }
      if (currentAmp === null || capacityAmp === null) {
        const missing = result?.missing ?? []
        return notComputedFrom(
          currentAmp !== null && missing.length > 0
            ? missing
            : [
                currentAmp === null
                  ? { path: at('currentAmp'), label: `current of ${conductor.name}` }
                  : { path: at('allowedRiseDegC'), label: `allowed temperature rise of ${conductor.name}` },
              ],
          places,
        )
      }
      return decide({
        value: capacityAmp,
        range: result?.capacityRangeAmp ?? undefined,
        limit: makeDesignLimit({
          key: 'statedCurrentAmp',
          value: currentAmp,
          unit: 'amp',
          sense: 'at-least',
          sourceKey: 'ipc2221',
          name: 'stated current',
        }),
        places,
        what: `capacity of ${conductor.name}`,
        equation: 'I = k dT^0.44 A^0.725',
        sourceKey: 'ipc2221',
        cautions: result?.cautions ?? [],
      })
    }),
})
