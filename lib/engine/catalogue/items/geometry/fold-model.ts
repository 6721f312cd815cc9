import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { checkObserved, listBends } from '../../checks'
import { notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

const COMMON = {
  section: 'geometry',
  titles: { meets: 'Folds were tried on a model', fails: 'A fold was not tried on a model' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.triedOnModel', ...BEND_PLACE_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'bends[].triedOnModel', worse: 'no' }],
} as const

export const foldModel = defineItem({
  ...COMMON,
  id: 'fold-model',
  severity: 'minor',
  question: 'Have slack and developed length been tried on a paper or film model?',
  appliesTo: { needs: ['one-bend'], says: 'designs with one bend' },
  check: checkModel,
})

/** From two bends on the order of folds decides whether the part can be folded at all. */
export const foldOrderModel = defineItem({
  ...COMMON,
  id: 'fold-order-model',
  severity: 'major',
  question:
    'Have slack, developed length and the order of folds been tried on a paper or film model of the whole part?',
  appliesTo: { needs: ['several-bends'], says: 'designs with several bends' },
  check: checkModel,
})

/** One statement for the part: a model of it has every bend. */
function checkModel(context: EvaluationContext): Outcome[] {
  const bends = listBends(context)
  const untried = bends.filter(({ bend }) => bend.triedOnModel === false)
  const open = bends.filter(({ bend }) => bend.triedOnModel === null)
  if (untried.length === 0 && open.length > 0) {
    const missing = open.map(({ bend, index }) => ({
      path: ['bends', index, 'triedOnModel'],
      label: `whether ${callByName('bend', bend.name)} was tried on a model`,
    }))
    return [
      {
        ...notComputedFrom(
          missing,
          open.map(({ place }) => place),
        ),
        rests: 'stated',
      },
    ]
  }
  const [first] = untried.length > 0 ? untried : bends
  if (first === undefined) return []
  const nameAll = (list: typeof bends) => list.map(({ bend }) => bend.name).join(', ')
  return [
    checkObserved({
      observed: untried.length === 0,
      wanted: true,
      path: ['bends', first.index, 'triedOnModel'],
      label: 'whether the part was tried on a model',
      whenRight: `Tried on a model: ${nameAll(bends)}.`,
      whenWrong: `Not tried on a model: ${nameAll(untried)}.`,
      places: (untried.length > 0 ? untried : bends).map(({ place }) => place),
      sourceKey: 'commonPractice',
    }),
  ]
}
