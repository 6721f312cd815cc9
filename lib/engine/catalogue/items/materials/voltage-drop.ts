import type { ConductorResult, Outcome, Place } from '../../../results'
import { placeOf } from '../../checks'
import {
  cannotTell,
  cannotTellFrom,
  decide,
  makeDesignLimit,
  notApplicable,
  notComputed,
  notComputedFrom,
} from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

export const voltageDrop = defineItem({
  id: 'voltage-drop',
  section: 'materials',
  severity: 'major',
  question: 'Does the voltage drop of each conductor stay within what is allowed?',
  titles: { meets: 'Voltage drops stay within what is allowed', fails: 'A conductor drops too much voltage' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors with an allowed drop' },
  limits: [],
  sourceKeys: ['iacs'],
  restsOn: [...SECTION_INPUTS, 'features.conductors', ...TEMPERATURE_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [
    { path: 'features.conductors[].currentAmp', worse: 'larger' },
    { path: 'features.conductors[].widthMm', worse: 'smaller' },
    { path: 'features.conductors[].lengthMm', worse: 'larger' },
    { path: 'features.conductors[].allowedDropVolt', worse: 'smaller' },
    { path: 'brief.operatingMaxDegC', worse: 'larger' },
    ...WIDER_TOLERANCES,
  ],
  check: (context) => {
    const isAnyStated = context.design.features.conductors.some(({ allowedDropVolt }) => allowedDropVolt !== null)
    return context.design.features.conductors.map((conductor, index): Outcome => {
      const result = context.conductors[index]
      const places = [placeOf('conductor', conductor)]
      const { allowedDropVolt } = conductor
      if (allowedDropVolt === null) {
        // Where others state what they may lose, a conductor that carries current and says nothing is a gap, not an exception.
        return isAnyStated && conductor.currentAmp !== 0
          ? notComputed(
              ['features', 'conductors', index, 'allowedDropVolt'],
              `allowed drop of ${conductor.name}`,
              places,
            )
          : notApplicable(`no drop is stated for ${conductor.name}`, places)
      }
      const what = `drop over ${conductor.name}`
      if (result !== undefined && result.cannotTell !== null) return cannotTellFrom(result, `the ${what}`, places)
      if (result !== undefined && result.dropAtLeastVolt !== null) {
        const atLeast = decide({
          ...describeDrop(allowedDropVolt, result, what, places),
          value: result.dropAtLeastVolt,
          bound: 'more-than',
        })
        if (atLeast.verdict === 'fails') return atLeast
        return cannotTell(
          `the ${what}`,
          { because: 'it is hotter than resistance is computed for', decidedBy: 'lower the current or widen it' },
          places,
        )
      }
      if (result === undefined || result.dropVolt === null) {
        const missing = result?.missing ?? []
        return notComputedFrom(
          missing.length > 0
            ? missing
            : [{ path: ['features', 'conductors', index, 'lengthMm'], label: `length of ${conductor.name}` }],
          places,
        )
      }
      return decide({
        ...describeDrop(allowedDropVolt, result, what, places),
        value: result.dropVolt,
        range: result.dropRangeVolt ?? undefined,
        rangeOver: 'both',
      })
    })
  },
})

const describeDrop = (
  allowedDropVolt: number,
  { cautions }: Pick<ConductorResult, 'cautions'>,
  what: string,
  places: readonly Place[],
) => ({
  limit: makeDesignLimit({
    key: 'allowedDropVolt',
    value: allowedDropVolt,
    unit: 'volt',
    sense: 'at-most',
    sourceKey: 'iacs',
    name: 'stated allowance',
  }),
  places,
  what,
  equation: 'U = I rho L / (w t) (1 + alpha (T - 20 degC))',
  sourceKey: 'iacs' as const,
  cautions,
})
