import { callByName } from '../../../design'
import { checkObserved, listBends, notComputedUse } from '../../checks'
import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const freeLength = defineItem({
  id: 'free-length',
  section: 'geometry',
  severity: 'major',
  question: 'Is every bend that is called static tied down, so that shock and vibration cannot move it?',
  titles: { meets: 'Static bends are tied down', fails: 'Shock or vibration can move a bend that is called static' },
  appliesTo: { needs: ['standing-bends'], says: 'designs with a bend that stands in service' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.inProduct.isTiedDown', 'bends.*.use', ...BEND_PLACE_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'bends[].inProduct.isTiedDown', worse: 'no' }],
  check: (context) =>
    listBends(context).map((checked) => {
      const { bend, index, place } = checked
      if (bend.use === null) return notComputedUse(checked)
      if (bend.use === 'dynamic')
        return notApplicable(`${callByName('bend', bend.name)} is counted as dynamic`, [place])
      return checkObserved({
        observed: bend.inProduct.isTiedDown,
        wanted: true,
        path: ['bends', index, 'inProduct', 'isTiedDown'],
        label: `what ties down ${callByName('bend', bend.name)}`,
        whenRight: `${callByName('Bend', bend.name)} is tied down.`,
        whenWrong: `Nothing ties ${callByName('bend', bend.name)} down: what shakes the product flexes it.`,
        places: [place],
        sourceKey: 'commonPractice',
      })
    }),
})
