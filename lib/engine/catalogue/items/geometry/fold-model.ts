import { checkObserved, listBends } from '../../checks'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const foldModel = defineItem({
  id: 'fold-model',
  section: 'geometry',
  severity: 'minor',
  question: 'Have slack, developed length and fold order been tried on a paper or film model?',
  titles: { meets: 'Folds were tried on a model', fails: 'A fold was not tried on a model' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.triedOnModel', ...BEND_PLACE_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'bends[].triedOnModel', worse: 'no' }],
  check: (context) =>
    listBends(context).map(({ bend, index, place }) =>
      checkObserved({
        observed: bend.triedOnModel,
        wanted: true,
        path: ['bends', index, 'triedOnModel'],
        label: `whether bend ${bend.name} was tried on a model`,
        whenRight: `${bend.name} was tried on a model.`,
        whenWrong: `${bend.name} was not tried on a model.`,
        places: [place],
        sourceKey: 'commonPractice',
      }),
    ),
})
