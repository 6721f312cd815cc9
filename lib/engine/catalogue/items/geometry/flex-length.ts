import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const flexLength = defineItem({
  id: 'flex-length',
  section: 'geometry',
  severity: 'minor',
  question: 'Is each flex zone beside rigid or stiffened ones long enough to be made?',
  titles: { meets: 'Flex zones are long enough to be made', fails: 'A flex zone is shorter than is made with ease' },
  appliesTo: { needs: ['transitions'], says: 'parts with a rigid or stiffened zone beside a flex zone' },
  limits: ['flexLengthMm'],
  sourceKeys: [],
  restsOn: ['construction.zones'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'construction.zones[].lengthMm', worse: 'smaller' }],
  check: (context) =>
    context.design.construction.zones.flatMap((zone, index): Outcome[] => {
      if (zone.kind !== 'flex') return []
      const places = [placeOf('zone', zone)]
      return [
        zone.lengthMm === null
          ? notComputed(['construction', 'zones', index, 'lengthMm'], `length of zone ${zone.name}`, places, 'typed')
          : decide({
              value: zone.lengthMm,
              limit: context.getLimit('flexLengthMm'),
              places,
              what: `length of ${zone.name}`,
              equation: 'length as entered',
              isTyped: true,
            }),
      ]
    }),
})
