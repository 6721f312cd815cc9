import { placeOf } from '../../checks'
import { decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const registrationFeatures = defineItem({
  id: 'registration-features',
  section: 'fabrication',
  severity: 'minor',
  question: 'Have the features that depend on registration been reviewed one by one?',
  titles: { meets: 'The fabricator holds each registration', fails: 'A registration is not held' },
  appliesTo: { needs: ['registrations'], says: 'designs with features that must register with each other' },
  limits: [],
  sourceKeys: ['guideCoverlayOpenings'],
  restsOn: [
    'features.registrations',
    'features.none',
    'brief.registrationCriticalFeatures',
    'construction.layers',
    'construction.zones',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.registrations[].neededMm', worse: 'smaller' },
    { path: 'features.registrations[].heldMm', worse: 'larger' },
  ],
  check: ({ design }) =>
    design.features.registrations.map((pair, index) => {
      const places = [placeOf('registration', pair)]
      const { neededMm, heldMm } = pair
      const missing = (field: string, label: string) =>
        notComputed(['features', 'registrations', index, field], `${label} ${pair.name}`, places, 'typed')
      if (neededMm === null) return missing('neededMm', 'largest shift that works for')
      if (heldMm === null) return missing('heldMm', 'what the fabricator holds for')
      return decide({
        value: heldMm,
        limit: makeDesignLimit({
          key: 'registrationMm',
          value: neededMm,
          unit: 'mm',
          sense: 'at-most',
          sourceKey: 'guideCoverlayOpenings',
          name: `what works for ${pair.name}`,
        }),
        places,
        what: `registration that the fabricator holds for ${pair.name}`,
        equation: 'as typed',
        isTyped: true,
      })
    }),
  judgment: { evidence: 'The list of features with the registration that the fabricator holds.' },
})
