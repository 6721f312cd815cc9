import { BRIEF_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const panelForm = defineItem({
  id: 'panel-form',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it agreed in which form the parts come to assembly?',
  why: 'Single flexible parts cannot be printed with paste or fed without a carrier; arrays need tabs and tooling that must be drawn before the panel is.',
  howToCheck:
    'Ask the assembler, then put form, rails, tabs and fiducials on the drawing or leave them to the fabricator by name.',
  titles: { meets: 'The form for assembly fits', fails: 'Single parts go to soldering without a carrier' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  check: ({ design: { brief } }) => {
    if (brief.panelForm === null) return [notComputed(['brief', 'panelForm'], 'panel form', [BRIEF_PLACE])]
    if (brief.panelForm === 'single-parts' && brief.solderedAssembly === null) {
      return [notComputed(['brief', 'solderedAssembly'], 'whether the part is soldered', [BRIEF_PLACE])]
    }
    const isLoose = brief.panelForm === 'single-parts' && brief.solderedAssembly === true
    return [
      decide({
        value: isLoose ? 1 : 0,
        limit: makeNoneAllowed('looseSolderedPartsCount', 'commonPractice'),
        places: [BRIEF_PLACE],
        what: 'contradictions between form and assembly',
        equation: 'stated form against stated assembly',
        remark: `Form: ${brief.panelForm.replaceAll('-', ' ')}.`,
      }),
    ]
  },
})
