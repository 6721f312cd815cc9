import { callByName } from '../../../design'
import { type Outcome, placeOf } from '../../../results'
import { listBareFaces } from '../../bare-faces'
import { decide, makeNoneAllowed, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const outerCover = defineItem({
  id: 'outer-cover',
  section: 'materials',
  severity: 'major',
  question: 'Is the copper of each zone that does not bend covered by film, laminate or mask, apart from contacts?',
  titles: { meets: 'Film or mask covers the copper outside bends', fails: 'The copper of a whole zone is bare' },
  appliesTo: { needs: ['zones', 'conductor-layers'], says: 'designs with a conductor layer' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.zones', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const bent = new Set(context.design.bends.map(({ zoneId }) => zoneId))
    return context.zones.map((zone, index): Outcome => {
      const place = placeOf('zone', { id: zone.zoneId, name: zone.name })
      if (zone.layers.length === 0) {
        return notComputed(['construction', 'zones', index, 'presence'], `layers of ${callByName('zone', zone.name)}`, [
          place,
        ])
      }
      if (zone.kind === 'finger') return notApplicable(`the contacts of ${zone.name} lie open`, [place])
      if (bent.has(zone.zoneId)) return notApplicable(`what covers ${zone.name} is asked with its bend`, [place])
      const bare = listBareFaces(zone, ({ kind }) => kind === 'solder-mask')
      const layers = new Map(
        bare.map(({ layer }) => [layer.layerId, placeOf('layer', { id: layer.layerId, name: layer.name })]),
      )
      return decide({
        value: bare.length,
        limit: makeNoneAllowed('bareOuterFacesCount', 'commonPractice'),
        places: [place, ...layers.values()],
        what: `bare copper faces in ${zone.name}`,
        equation: 'order of the layers',
        remark:
          bare.length === 0
            ? undefined
            : `Bare: ${bare.map(({ layer, face }) => `${layer.name}, ${face} face`).join('; ')}. What is soldered or touched lies open through openings; the rest needs a cover.`,
      })
    })
  },
})
