import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { sourceOf } from '../../drawn'

export const flexLength = defineItem({
  id: 'flex-length',
  section: 'geometry',
  severity: 'minor',
  question: 'Is each flex zone beside rigid or stiffened ones long enough to be made?',
  titles: {
    meets: 'Flex zones are long enough to be made',
    fails: 'A flex zone is too short to be made',
    'thin-margin': 'A flex zone is shorter than is made with ease',
  },
  appliesTo: { needs: ['transitions'], says: 'parts with a rigid or stiffened zone beside a flex zone' },
  limits: ['flexLengthLeastMm', 'flexLengthMm'],
  sourceKeys: [],
  restsOn: ['plan', 'construction.zones'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'construction.zones[].lengthMm', worse: 'smaller' }],
  check: (context) => {
    const [least, preferred] = [context.getLimit('flexLengthLeastMm'), context.getLimit('flexLengthMm')]
    const isPreferred = (mm: number) => mm >= preferred.value && mm >= least.value
    return context.design.construction.zones.flatMap((zone, index): Outcome[] => {
      if (zone.kind !== 'flex') return []
      const places = [placeOf('zone', zone)]
      return [
        zone.lengthMm === null
          ? notComputed(
              ['construction', 'zones', index, 'lengthMm'],
              `length of ${callByName('zone', zone.name)}`,
              places,
              'typed',
            )
          : decide({
              value: zone.lengthMm,
              // Shorter than preferred is made, and not with ease: a thin margin.
              limit: isPreferred(zone.lengthMm) ? preferred : least,
              ...(isPreferred(zone.lengthMm) ? {} : { limitRange: { low: least.value, high: preferred.value } }),
              places,
              what: `length of ${zone.name}`,
              ...sourceOf(context, ['construction', 'zones', index, 'lengthMm'], 'length as entered'),
              summary: `Length of ${zone.name}: ${inSentence(zone.lengthMm, 'mm')}; at least ${inSentence(least.value, 'mm')}, ${inSentence(preferred.value, 'mm')} preferred.`,
            }),
      ]
    })
  },
})
