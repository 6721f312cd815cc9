import { BRIEF_PLACE, checkDynamicBends, checkObserved } from '../../checks'
import { defineItem } from '../../define-item'

export const foldTest = defineItem({
  id: 'fold-test',
  section: 'fabrication',
  severity: 'major',
  question: 'Is a fold or flex test asked for where the part bends in service?',
  titles: { meets: 'A fold or flex test is asked for', fails: 'No fold or flex test is asked for' },
  appliesTo: { needs: ['dynamic-bends'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['fatigueDuctility'],
  restsOn: ['brief.foldTest', 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [{ path: 'brief.foldTest', worse: 'no' }],
  check: (context) => [
    ...checkDynamicBends(context, () => []),
    checkObserved({
      observed: context.design.brief.foldTest,
      wanted: true,
      path: ['brief', 'foldTest'],
      label: 'whether a fold or flex test is asked for',
      whenRight: 'A fold or flex test is asked for.',
      whenWrong: 'No fold or flex test is asked for.',
      places: [BRIEF_PLACE],
      sourceKey: 'fatigueDuctility',
      rests: 'typed',
    }),
  ],
})
