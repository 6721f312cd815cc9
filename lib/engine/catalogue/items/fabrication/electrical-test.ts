import { BRIEF_PLACE, checkObserved } from '../../checks'
import { defineItem } from '../../define-item'

export const electricalTest = defineItem({
  id: 'electrical-test',
  section: 'fabrication',
  severity: 'major',
  question: 'Is an electrical test of every part asked for?',
  titles: { meets: 'Electrical test is asked for', fails: 'No electrical test is asked for' },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: [],
  sourceKeys: ['ipc6013'],
  restsOn: ['brief.electricalTest'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [{ path: 'brief.electricalTest', worse: 'no' }],
  check: ({ design }) => [
    checkObserved({
      observed: design.brief.electricalTest,
      wanted: true,
      path: ['brief', 'electricalTest'],
      label: 'whether an electrical test is asked for',
      whenRight: 'Electrical test is asked for.',
      whenWrong: 'No electrical test is asked for.',
      places: [BRIEF_PLACE],
      sourceKey: 'ipc6013',
      rests: 'typed',
    }),
  ],
})
