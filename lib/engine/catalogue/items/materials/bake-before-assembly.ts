import { defineItem } from '../../define-item'
import { listDryingTerms } from '../../drying-terms'
import { listOpen } from '../../given'

export const bakeBeforeAssembly = defineItem({
  id: 'bake-before-assembly',
  section: 'materials',
  severity: 'major',
  question: 'Is drying or baking before soldering agreed?',
  titles: { judgment: 'Somebody must settle drying before soldering' },
  appliesTo: { needs: ['soldering'], says: 'parts that are soldered' },
  limits: [],
  sourceKeys: ['ipc1601', 'guideMoisture'],
  restsOn: [
    'brief.bakeBeforeAssembly',
    'brief.assembly.drying',
    'brief.assembly.bakeDegC',
    'brief.assembly.bakeHours',
    'brief.assembly.toSolderHours',
    'brief.assembly.dryingSetBy',
    'brief.solderedAssembly',
    'construction.layers.*.materialId',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: {
    evidence: 'The bake and wait times agreed with the assembler, and where they come from.',
    findMissing: ({ design }) => listOpen(listDryingTerms(design.brief)),
  },
})
