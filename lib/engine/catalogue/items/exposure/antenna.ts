import { BRIEF_PLACE } from '../../checks'
import { decide, makeDesignLimit, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated } from '../../terms'

export const antenna = defineItem({
  id: 'antenna',
  section: 'geometry',
  severity: 'major',
  question: 'Are metal, shields and stiffeners kept clear of each antenna, also when folded?',
  titles: { meets: 'Metal is clear of the antenna', fails: 'Metal comes too near the antenna' },
  appliesTo: { needs: ['layers'], says: 'parts with an antenna on or near them' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.exposure.hasAntenna',
    'brief.exposure.antennaKeepOutMm',
    'brief.exposure.antennaToMetalMm',
    'bends',
    'construction.layers',
    'construction.zones',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  onlyWithProfile: true,
  monotone: [
    { path: 'brief.exposure.antennaToMetalMm', worse: 'smaller' },
    { path: 'brief.exposure.antennaKeepOutMm', worse: 'larger' },
  ],
  check: (context) => {
    const { hasAntenna, antennaKeepOutMm, antennaToMetalMm } = context.design.brief.exposure
    if (hasAntenna === null) return askFor(findUnstated(context, 'exposure', ['hasAntenna']))
    if (!hasAntenna) return [notApplicable('no antenna is on or near the part')]
    if (antennaKeepOutMm === null || antennaToMetalMm === null) {
      return askFor(findUnstated(context, 'exposure', ['antennaKeepOutMm', 'antennaToMetalMm']))
    }
    return [
      decide({
        value: antennaToMetalMm,
        limit: makeDesignLimit({
          key: 'antennaKeepOutMm',
          value: antennaKeepOutMm,
          unit: 'mm',
          sense: 'at-least',
          sourceKey: 'commonPractice',
          name: 'keep-out of the antenna',
        }),
        places: [BRIEF_PLACE],
        what: 'antenna to the nearest metal, folded',
        equation: 'as stated, in the folded state',
        isTyped: true,
      }),
    ]
  },
  judgment: { evidence: 'A statement by the antenna designer, with the folded state that they looked at.' },
})
