import { defineItem } from '../../define-item'

export const bakeBeforeAssembly = defineItem({
  id: 'bake-before-assembly',
  section: 'materials',
  severity: 'major',
  question: 'Is it settled how the part is kept dry or baked before soldering?',
  why: 'Polyimide takes up water within hours, 0.8 to 2.9 % by weight, and water turns to steam under solder: layers part. Published profiles contradict each other, from 65 to 150 °C and from minutes to hours of waiting; some finishes must not be baked at all.',
  howToCheck:
    'Take the profile from the makers of film and finish and from the handling standard; agree it with the assembler, with the time allowed between oven and solder.',
  titles: { judgment: 'Somebody must settle drying before soldering' },
  appliesTo: { needs: ['soldering'], says: 'parts that are soldered' },
  limits: [],
  sourceKeys: ['ipc1601'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  judgment: {
    evidence: 'The bake and wait times agreed with the assembler, and where they come from.',
    findMissing: ({ design }) =>
      design.brief.bakeBeforeAssembly.trim() === ''
        ? [{ path: ['brief', 'bakeBeforeAssembly'], label: 'bake before assembly' }]
        : [],
  },
})
