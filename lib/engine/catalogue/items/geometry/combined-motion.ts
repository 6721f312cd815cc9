import { BEND_FIELDS, callByName, getChoiceWord } from '../../../design'
import { checkObserved, listBends } from '../../checks'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const combinedMotion = defineItem({
  id: 'combined-motion',
  section: 'geometry',
  severity: 'major',
  question: 'Is each bend free of twist, of a second direction, and of motion where it was folded?',
  titles: { meets: 'No bend combines motions', fails: 'A bend combines motions that no model here covers' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.inProduct.furtherMotion', 'bends.*.use', ...BEND_PLACE_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).map(({ bend, index, place }) => {
      const { furtherMotion } = bend.inProduct
      return checkObserved({
        observed: furtherMotion === null ? null : furtherMotion === 'none',
        wanted: true,
        path: ['bends', index, 'inProduct', 'furtherMotion'],
        label: `further motion of ${callByName('bend', bend.name)}`,
        whenRight: `${callByName('Bend', bend.name)} has no further motion.`,
        whenWrong: `${callByName('Bend', bend.name)}: ${getChoiceWord(BEND_FIELDS.inProduct.fields.furtherMotion, furtherMotion)}. Strain and life here are of plain bending; a test decides.`,
        places: [place],
        sourceKey: 'commonPractice',
      })
    }),
})
