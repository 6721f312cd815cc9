import { defineItem } from '../../define-item'

export const registrationFeatures = defineItem({
  id: 'registration-features',
  section: 'fabrication',
  severity: 'minor',
  question: 'Have the features that depend on registration been questioned one by one?',
  why: 'Fingers to edge, coverlay to pads, stiffener to fingers: each adds a step of registration, and film moves between steps.',
  howToCheck:
    'List the features whose position depends on two processes or more, with what each can bear; ask the fabricator what they hold.',
  titles: { judgment: 'Somebody must go through the registration-critical features' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['guideCoverlayOpenings'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  judgment: {
    evidence: 'The list of features with the registration that the fabricator holds.',
    findMissing: ({ design }) =>
      design.brief.registrationCriticalFeatures.trim() === ''
        ? [{ path: ['brief', 'registrationCriticalFeatures'], label: 'registration-critical features' }]
        : [],
  },
})
