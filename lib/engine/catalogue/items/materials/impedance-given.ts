import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkGiven } from '../../given'
import { IMPEDANCE_INPUTS } from '../../item-inputs'

export const impedanceGiven = defineItem({
  id: 'impedance-given',
  section: 'materials',
  severity: 'major',
  question: 'Is each impedance given with its tolerance, reference layer, kind of line and coupon?',
  titles: { meets: 'Impedances are given in full', fails: 'The reference of an impedance is not a plane' },
  appliesTo: { needs: ['controlled-impedance'], says: 'designs with a conductor whose impedance is stated' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [...IMPEDANCE_INPUTS, 'construction.layers.*.role', 'construction.layers.*.planePattern'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: ({ design }) =>
    design.features.conductors.flatMap((conductor, index): Outcome[] => {
      if (conductor.impedanceOhm === null) return []
      const places = [placeOf('conductor', conductor)]
      const { impedance } = conductor
      const term = (field: keyof typeof impedance, label: string) => ({
        path: ['features', 'conductors', index, 'impedance', field],
        label: `${label} of ${conductor.name}`,
        value: impedance[field],
      })
      const reference = design.construction.layers.find(({ id }) => id === impedance.referenceLayerId)
      if (reference?.kind === 'conductor' && reference.role === 'signal') {
        return [
          decide({
            value: 1,
            limit: makeNoneAllowed('referencesWithoutPlaneCount', 'commonPractice'),
            places,
            what: `reference layers without a plane, of ${conductor.name}`,
            equation: 'role of the reference layer',
            remark: `${reference.name} carries conductors alone.`,
          }),
        ]
      }
      return [
        checkGiven({
          terms: [
            term('tolerancePct', 'tolerance of the impedance'),
            term('referenceLayerId', 'reference layer'),
            term('kind', 'single or pair'),
            term('coupon', 'whether a coupon is asked for'),
          ],
          places,
          whenGiven: `The impedance of ${conductor.name} is given in full.`,
          sourceKey: 'commonPractice',
        }),
      ]
    }),
})
