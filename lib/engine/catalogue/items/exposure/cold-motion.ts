import { BRIEF_PLACE, checkDynamicBends } from '../../checks'
import { decide, makeDesignLimit, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated } from '../../terms'

export const coldMotion = defineItem({
  id: 'cold-motion',
  section: 'fabrication',
  severity: 'major',
  question: 'Does the part move at its lowest temperature, and was flexing tested there?',
  titles: {
    meets: 'Flexing is tested at the lowest temperature',
    fails: 'Flexing is not tested at the lowest temperature',
  },
  appliesTo: { needs: ['dynamic-bends'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.exposure.movesWhenCold', 'brief.exposure.coldTestDegC', 'brief.operatingMinDegC', 'bends.*.use'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  onlyWithProfile: true,
  monotone: [
    { path: 'brief.exposure.coldTestDegC', worse: 'larger' },
    { path: 'brief.operatingMinDegC', worse: 'smaller' },
  ],
  check: (context) => {
    const { exposure, operatingMinDegC } = context.design.brief
    const unknownUse = checkDynamicBends(context, () => [])
    if (exposure.movesWhenCold === null) {
      return [...unknownUse, ...askFor(findUnstated(context, 'exposure', ['movesWhenCold']))]
    }
    if (!exposure.movesWhenCold) return [...unknownUse, notApplicable('nothing moves at the lowest temperature')]
    const missing = [
      ...findUnstated(context, 'exposure', ['coldTestDegC']),
      ...(operatingMinDegC === null
        ? [{ path: ['brief', 'operatingMinDegC'], label: 'lowest operating temperature' }]
        : []),
    ]
    if (exposure.coldTestDegC === null || operatingMinDegC === null) return [...unknownUse, ...askFor(missing)]
    return [
      ...unknownUse,
      decide({
        value: exposure.coldTestDegC,
        limit: makeDesignLimit({
          key: 'operatingMinDegC',
          value: operatingMinDegC,
          unit: 'degC',
          sense: 'at-most',
          sourceKey: 'commonPractice',
          name: 'lowest operating temperature',
        }),
        places: [BRIEF_PLACE],
        what: 'lowest temperature of the flex test',
        equation: 'as stated',
        isTyped: true,
      }),
    ]
  },
})
