import type { ConductorResult, Outcome, Place } from '../../../results'
import { placeOf } from '../../checks'
import { cannotTell, cannotTellFrom, decide, makeDesignLimit, notApplicable, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

export const voltageDrop = defineItem({
  id: 'voltage-drop',
  section: 'materials',
  severity: 'major',
  question: 'Does the voltage drop of each conductor stay within what is allowed?',
  titles: { meets: 'Voltage drops stay within what is allowed', fails: 'A conductor drops too much voltage' },
  appliesTo: { needs: ['conductors'], says: 'designs that list conductors with what they carry' },
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
  check: (context) =>
    context.design.features.conductors.map((conductor, index): Outcome => {
      const result = context.conductors[index]
      const places = [placeOf('conductor', conductor)]
      const { allowedDropVolt } = conductor
      if (conductor.carriesPower === false && conductor.currentAmp === null) {
        return notApplicable(`${conductor.name} is stated to carry no power`, places)
      }
      if (allowedDropVolt === null) {
        return notComputedFrom(
          [{ path: ['features', 'conductors', index, 'allowedDropVolt'], label: `allowed drop of ${conductor.name}` }],
          places,
        )
      }
      const what = `drop over ${conductor.name}`
      if (result !== undefined && result.cannotTell !== null) return cannotTellFrom(result, `the ${what}`, places)
      if (result !== undefined && result.dropAtLeastVolt !== null) {
        const atLeast = decide({
          ...describeDrop(allowedDropVolt, result, what, places),
          value: result.dropAtLeastVolt * (conductor.returnAsLong === true ? 2 : 1),
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
      const { dropVolt, dropRangeVolt } = result
      const decideFor = (factor: 1 | 2) =>
        decide({
          ...describeDrop(allowedDropVolt, result, factor === 2 ? `${what}, there and back` : what, places),
          value: factor * dropVolt,
          range:
            dropRangeVolt === null ? undefined : { low: factor * dropRangeVolt.low, high: factor * dropRangeVolt.high },
          rangeOver: 'both',
        })
      if (conductor.returnAsLong !== null) return decideFor(conductor.returnAsLong ? 2 : 1)
      // Nobody said how the current returns: what is too much one way is too much, what holds both ways holds.
      const [one, both] = [decideFor(1), decideFor(2)]
      if (one.verdict === 'fails') return one
      if (both.verdict === 'meets') return both
      return notComputedFrom(
        [
          {
            path: ['features', 'conductors', index, 'returnAsLong'],
            label: `whether the return of ${conductor.name} is as long`,
          },
        ],
        places,
      )
    }),
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
  equation: 'U = I rho L / (w t) (1 + alpha (T - 20 degC)), twice where the return is as long',
  sourceKey: 'iacs' as const,
  cautions,
})
