import { BRIEF_FIELDS, getChoiceWord } from '../../../design'
import { BRIEF_PLACE, checkObserved } from '../../checks'
import { notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const carrier = defineItem({
  id: 'carrier',
  section: 'fabrication',
  severity: 'major',
  question: 'What holds the flat part while paste, components and heat come?',
  titles: { meets: 'Something holds the part flat', fails: 'Nothing holds the part flat during soldering' },
  appliesTo: { needs: ['soldering'], says: 'parts that are soldered' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.assembly.carrier', 'brief.panelForm', 'brief.solderedAssembly'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: ({ design: { brief } }) => {
    if (brief.solderedAssembly === null) {
      return [notComputed(['brief', 'solderedAssembly'], 'whether the part is soldered', [BRIEF_PLACE])]
    }
    const held = brief.assembly.carrier
    if (held === 'array-frame' && brief.panelForm === null) {
      return [notComputed(['brief', 'panelForm'], 'panel form', [BRIEF_PLACE])]
    }
    const isContradicted = held === 'array-frame' && brief.panelForm === 'single-parts'
    return [
      checkObserved({
        observed: held === null ? null : held !== 'nothing' && !isContradicted,
        wanted: true,
        path: ['brief', 'assembly', 'carrier'],
        label: 'what holds the part flat during soldering',
        whenRight: `Held flat by ${getChoiceWord(BRIEF_FIELDS.assembly.fields.carrier, held)}.`,
        whenWrong: isContradicted
          ? 'The frame of an array is to hold the part, and parts come singly.'
          : 'Nothing holds the part flat during soldering.',
        places: [BRIEF_PLACE],
        sourceKey: 'commonPractice',
      }),
    ]
  },
})
