import { BRIEF_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const panelForm = defineItem({
  id: 'panel-form',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it agreed in which form the parts come to assembly?',
  titles: { meets: 'The form for assembly fits', fails: 'Single parts go to soldering without a carrier' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.panelForm', 'brief.solderedAssembly'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: ({ design: { brief } }) => {
    if (brief.panelForm === null) return [notComputed(['brief', 'panelForm'], 'panel form', [BRIEF_PLACE])]
    if (brief.panelForm !== 'assembly-arrays' && brief.solderedAssembly === null) {
      return [notComputed(['brief', 'solderedAssembly'], 'whether the part is soldered', [BRIEF_PLACE])]
    }
    // What the fabricator decides suits the fabricator: nobody has asked who solders.
    if (brief.panelForm === 'fabricator-decides' && brief.solderedAssembly === true) {
      return [notComputed(['brief', 'panelForm'], 'the form that the assembler can take', [BRIEF_PLACE])]
    }
    const isLoose = brief.panelForm === 'single-parts' && brief.solderedAssembly === true
    return [
      decide({
        value: isLoose ? 1 : 0,
        limit: makeNoneAllowed('looseSolderedPartsCount', 'commonPractice'),
        places: [BRIEF_PLACE],
        what: 'contradictions between form and assembly',
        equation: 'stated form against stated assembly',
        isTyped: true,
        remark: `Form: ${brief.panelForm.replaceAll('-', ' ')}.`,
      }),
    ]
  },
})
