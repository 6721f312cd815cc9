import { BRIEF_PLACE, checkObserved } from '../../checks'
import { defineItem } from '../../define-item'

export const foldTest = defineItem({
  id: 'fold-test',
  section: 'fabrication',
  severity: 'major',
  question: 'Is a fold or flex test asked for, by how the part bends?',
  titles: { meets: 'A fold or flex test is asked for', fails: 'No fold or flex test is asked for' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['flexUses'],
  restsOn: ['brief.foldTest', 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [{ path: 'brief.foldTest', worse: 'no' }],
  check: (context) => [
    checkObserved({
      observed: context.design.brief.foldTest,
      wanted: true,
      path: ['brief', 'foldTest'],
      label: 'whether a fold or flex test is asked for',
      whenRight: 'A fold or flex test is asked for.',
      whenWrong: 'No fold or flex test is asked for.',
      places: [BRIEF_PLACE],
      sourceKey: 'flexUses',
      rests: 'typed',
    }),
  ],
})
