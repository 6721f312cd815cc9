import type { EvaluationContext } from '../../../context'
import { callByName, hasNickel } from '../../../design'
import type { Outcome } from '../../../results'
import { listBareFaces } from '../../bare-faces'
import { BRIEF_PLACE, listBends, notComputedLayers, placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'
import { NICKEL_FOR_BENDS_UM } from '../../process-figures'

export const surfaceFinish = defineItem({
  id: 'surface-finish',
  section: 'materials',
  severity: 'major',
  question: 'Is brittle nickel kept out of what bends?',
  titles: { meets: 'No nickel lies in a bend', fails: 'Nickel lies in a bend' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice', 'ipc4552', 'ipc4556', 'ipc4553', 'ipc4554'],
  restsOn: [
    'brief.surfaceFinish',
    'construction.layers',
    'construction.zones',
    'bends',
    'features.coverlayOpenings',
    'features.none',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const { surfaceFinish: finish } = context.design.brief
    if (finish === null) return [notComputed(['brief', 'surfaceFinish'], 'surface finish', [BRIEF_PLACE])]
    if (!hasNickel(finish)) {
      return [
        decide({
          value: 0,
          limit: makeNoneAllowed('nickelInBendCount', 'commonPractice'),
          places: [BRIEF_PLACE],
          what: 'places of nickel in bends',
          equation: 'finish as stated',
          remark: 'The finish holds no nickel.',
        }),
      ]
    }
    return [...checkCover(context), ...checkOpenings(context)]
  },
})

/** For who weighs a waiver: it decides nothing. */
const THIN_NICKEL_CAUTION = `Engineers of the trade, read at second hand, report no cracks at bends with ${NICKEL_FOR_BENDS_UM.low} to ${NICKEL_FOR_BENDS_UM.high} µm of nickel; so thin a coat risks weak solder joints.`

/** Where no film lies on copper, the finish goes on over the whole of it. */
function checkCover(context: EvaluationContext): Outcome[] {
  return listBends(context).map((checked) => {
    const { bend, zone, place } = checked
    const unknown = notComputedLayers(checked)
    if (unknown !== null || zone === null) return unknown ?? notComputed(['bends'], `layers of ${bend.name}`, [place])
    const bare = listBareFaces(zone, ({ kind }) => kind === 'solder-mask')
    const layers = [...new Map(bare.map(({ layer }) => [layer.layerId, layer])).values()]
    return decide({
      value: layers.length,
      limit: makeNoneAllowed('nickelInBendCount', 'commonPractice'),
      places: [place, ...layers.map(({ layerId, name }) => placeOf('layer', { id: layerId, name }))],
      what: `layers in ${callByName('bend', bend.name)} that take nickel over their whole face`,
      equation: 'finish, and what covers the copper',
      cautions: layers.length > 0 ? [THIN_NICKEL_CAUTION] : [],
    })
  })
}

/** An opening at no distance lies in its bend. How near one may come is for its own item. */
function checkOpenings(context: EvaluationContext): Outcome[] {
  const state = readListState('coverlayOpenings', context)
  if (state === 'none') return []
  if (state !== 'filled') return [notComputedFrom([state.missing], [BRIEF_PLACE])]
  return context.design.features.coverlayOpenings.map((opening, index) => {
    const { nearestBend, clearOfBends } = opening
    const distanceMm = nearestBend?.distanceMm ?? null
    const places = [placeOf('coverlay-opening', opening)]
    if (distanceMm === null && !(nearestBend === null && clearOfBends === true)) {
      const path = ['features', 'coverlayOpenings', index, 'nearestBend']
      return notComputed(path, `distance of ${opening.name} from the nearest bend`, places, 'typed')
    }
    const bend = context.design.bends.find(({ id }) => id === nearestBend?.bendId)
    return decide({
      value: distanceMm === 0 ? 1 : 0,
      limit: makeNoneAllowed('nickelInBendCount', 'commonPractice'),
      places: bend === undefined ? places : [...places, placeOf('bend', bend)],
      what: `nickel of ${opening.name} within a bend`,
      equation: 'opening and bend as listed',
      cautions: distanceMm === 0 ? [THIN_NICKEL_CAUTION] : [],
      isTyped: true,
    })
  })
}
