import { defineItem } from '../../define-item'

export const toleranceScheme = defineItem({
  id: 'tolerance-scheme',
  section: 'fabrication',
  severity: 'minor',
  question: 'Do datums and tolerances suit a part that is not rigid?',
  why: 'A flexible outline moves with humidity and with the hand that holds it. Tight coordinates across the film reject good parts; datums on rigid or stiffened zones measure what matters.',
  howToCheck:
    'Look for datums on stiffened zones, tolerances within a zone rather than across the flex, and a stated condition of restraint.',
  titles: { judgment: 'Somebody must judge datums and tolerances' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  judgment: {
    evidence: 'The drawing, with the datum scheme and the condition in which it is measured.',
    findMissing: ({ design }) =>
      design.brief.toleranceScheme.trim() === ''
        ? [{ path: ['brief', 'toleranceScheme'], label: 'tolerance and datum scheme' }]
        : [],
  },
})
