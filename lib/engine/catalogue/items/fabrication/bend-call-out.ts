import { callByName } from '../../../design'
import type { MissingInput, Outcome } from '../../../results'
import { checkDrawingSheet, listBends, ROUTING_PLACE } from '../../checks'
import { notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { TEMPERATURE_INPUTS } from '../../item-inputs'

export const bendCallOut = defineItem({
  id: 'bend-call-out',
  section: 'fabrication',
  severity: 'major',
  question: 'Is each bend called out with radius, angle, side, cycles and temperature?',
  titles: { meets: 'Bends are fully called out', fails: 'Bends are not called out on the drawing' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends', 'features.routing.bendsCalledOutOnDrawing', ...TEMPERATURE_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.bendsCalledOutOnDrawing', worse: 'no' }],
  check: (context) => {
    const { brief, features } = context.design
    const outcomes: Outcome[] = []
    for (const { bend, index, place } of listBends(context)) {
      const missing: MissingInput[] = []
      if (bend.use === null)
        missing.push({ path: ['bends', index, 'use'], label: `use of ${callByName('bend', bend.name)}` })
      if (bend.use === 'dynamic' && bend.requiredCycles === null) {
        missing.push({
          path: ['bends', index, 'requiredCycles'],
          label: `required cycles of ${callByName('bend', bend.name)}`,
        })
      }
      if (bend.use === 'dynamic' && brief.operatingMinDegC === null) {
        missing.push({ path: ['brief', 'operatingMinDegC'], label: 'lowest operating temperature' })
      }
      if (bend.use === 'dynamic' && brief.operatingMaxDegC === null) {
        missing.push({ path: ['brief', 'operatingMaxDegC'], label: 'highest operating temperature' })
      }
      if (missing.length > 0) outcomes.push(notComputedFrom(missing, [place]))
    }
    outcomes.push(
      checkDrawingSheet(context, 'bends', {
        observed: features.routing.bendsCalledOutOnDrawing,
        wanted: true,
        path: ['features', 'routing', 'bendsCalledOutOnDrawing'],
        label: 'whether bends are called out on the drawing',
        whenRight: 'Bends are called out on the drawing.',
        whenWrong: 'Bends are not called out on the drawing.',
        places: [ROUTING_PLACE],
        sourceKey: 'commonPractice',
      }),
    )
    return outcomes
  },
})
