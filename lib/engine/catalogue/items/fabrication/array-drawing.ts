import { BRIEF_FIELDS, getFieldInText } from '../../../design'
import type { Outcome } from '../../../results'
import { BRIEF_PLACE, checkObserved } from '../../checks'
import { notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkGiven } from '../../given'

const FEATURES = ['tabsOffFlex', 'fiducials', 'toolingHoles', 'badPartMark'] as const

const WORDS = {
  tabsOffFlex: ['All tabs stay off the flexible edges.', 'A tab joins a flexible edge.'],
  fiducials: ['The array has fiducials.', 'The array has no fiducials.'],
  toolingHoles: ['The array has tooling holes.', 'The array has no tooling holes.'],
  badPartMark: ['Bad parts of the array are marked.', 'Bad parts of the array are not marked.'],
} as const

export const arrayDrawing = defineItem({
  id: 'array-drawing',
  section: 'fabrication',
  severity: 'major',
  question: 'Does the array carry frame, tabs off the flex, fiducials, tooling holes and a mark for bad parts?',
  titles: { meets: 'The array carries what assembly needs', fails: 'The array lacks something that assembly needs' },
  appliesTo: { needs: ['arrays'], says: 'parts that come in arrays' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'plan',
    'brief.array.partCount',
    'brief.array.frameWidthMm',
    'brief.array.tabsOffFlex',
    'brief.array.fiducials',
    'brief.array.toolingHoles',
    'brief.array.badPartMark',
    'brief.panelForm',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: FEATURES.map((field) => ({ path: `brief.array.${field}`, worse: 'no' as const })),
  check: ({ design: { brief } }): Outcome[] => {
    if (brief.panelForm === null) return [notComputed(['brief', 'panelForm'], 'panel form', [BRIEF_PLACE], 'typed')]
    const { array } = brief
    const label = (field: keyof typeof array) => `${getFieldInText(BRIEF_FIELDS.array.fields[field])} of the array`
    return [
      checkGiven({
        terms: (['partCount', 'frameWidthMm'] as const).map((field) => ({
          path: ['brief', 'array', field],
          label: label(field),
          value: array[field],
        })),
        places: [BRIEF_PLACE],
        whenGiven: 'The array has its number of parts and the width of its frame.',
        sourceKey: 'commonPractice',
      }),
      ...FEATURES.map((field) =>
        checkObserved({
          observed: array[field],
          wanted: true,
          path: ['brief', 'array', field],
          label: label(field),
          whenRight: WORDS[field][0],
          whenWrong: WORDS[field][1],
          places: [BRIEF_PLACE],
          sourceKey: 'commonPractice',
        }),
      ),
    ]
  },
})
