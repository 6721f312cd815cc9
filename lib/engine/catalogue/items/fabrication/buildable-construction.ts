import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const buildableConstruction = defineItem({
  id: 'buildable-construction',
  section: 'fabrication',
  severity: 'blocking',
  question: 'Can the fabricator build this construction in their process, with the registration that it needs?',
  titles: { judgment: 'The fabricator must say whether it can be built' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [...SECTION_INPUTS, 'bends', 'features.holes'],
  decidedWhen: 'fabricator',
  answeredBy: ['fabricator'],
  monotone: [],
  judgment: {
    evidence: "The fabricator's declaration on the present content, and their remarks on lamination and registration.",
    findMissing: ({ facts }) =>
      facts.buildableDeclarationStands === true
        ? []
        : [{ path: ['facts', 'buildableDeclarationStands'], label: "fabricator's declaration on the present content" }],
  },
})
