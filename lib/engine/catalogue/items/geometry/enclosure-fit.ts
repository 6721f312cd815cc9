import { callByName } from '../../../design'
import { checkObserved, listBends } from '../../checks'

import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const enclosureFit = defineItem({
  id: 'enclosure-fit',
  section: 'geometry',
  severity: 'major',
  question: 'Has the formed part been followed through its motion in the model of the enclosure?',
  titles: { meets: 'The part was followed in its enclosure', fails: 'A bend was not followed in the enclosure' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.inProduct.followedInEnclosure', ...BEND_PLACE_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'bends[].inProduct.followedInEnclosure', worse: 'no' }],
  check: (context) =>
    listBends(context).map(({ bend, index, place }) =>
      checkObserved({
        observed: bend.inProduct.followedInEnclosure,
        wanted: true,
        path: ['bends', index, 'inProduct', 'followedInEnclosure'],
        label: `whether anybody followed in the enclosure ${callByName('bend', bend.name)}`,
        whenRight: `${callByName('Bend', bend.name)} was followed in the model of the enclosure.`,
        whenWrong: `${callByName('Bend', bend.name)} was not followed in the model of the enclosure.`,
        places: [place],
        sourceKey: 'commonPractice',
      }),
    ),
})
