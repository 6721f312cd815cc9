import { callByName } from '../../../design'
import { checkDynamicBends, checkObserved } from '../../checks'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const wear = defineItem({
  id: 'wear',
  section: 'geometry',
  severity: 'major',
  question: 'Does each moving bend rub on nothing but a guide with a radius?',
  titles: { meets: 'Moving bends do not rub', fails: 'A moving bend rubs on an edge or a surface' },
  appliesTo: { needs: ['dynamic-bends'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.inProduct.rubsOn', 'bends.*.use', ...BEND_PLACE_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    checkDynamicBends(context, ({ bend, index, place }) => {
      const { rubsOn } = bend.inProduct
      return checkObserved({
        observed: rubsOn === null ? null : rubsOn !== 'edge-or-surface',
        wanted: true,
        path: ['bends', index, 'inProduct', 'rubsOn'],
        label: `what ${callByName('bend', bend.name)} rubs on`,
        whenRight:
          rubsOn === 'nothing'
            ? `${callByName('Bend', bend.name)} rubs on nothing.`
            : `${callByName('Bend', bend.name)} runs on a guide with a radius.`,
        whenWrong: `${callByName('Bend', bend.name)} rubs on an edge or a surface.`,
        places: [place],
        sourceKey: 'commonPractice',
      })
    }),
})
