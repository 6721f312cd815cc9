import { defineItem } from '../../define-item'

export const registrationFeatures = defineItem({
  id: 'registration-features',
  section: 'fabrication',
  severity: 'minor',
  question: 'Have the features that depend on registration been reviewed one by one?',
  titles: { judgment: 'Somebody must go through the registration-critical features' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['guideCoverlayOpenings'],
  restsOn: ['brief.registrationCriticalFeatures', 'construction.layers', 'construction.zones', 'features'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: {
    evidence: 'The list of features with the registration that the fabricator holds.',
    findMissing: ({ design }) =>
      design.brief.registrationCriticalFeatures.trim() === ''
        ? [{ path: ['brief', 'registrationCriticalFeatures'], label: 'registration-critical features' }]
        : [],
  },
})
