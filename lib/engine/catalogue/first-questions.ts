/**
 * The first review of a part: fifteen questions of two minutes each, as items of the checklist. Our choice and order, from common practice; no published source.
 */
export const FIRST_QUESTIONS: readonly { readonly question: string; readonly itemIds: readonly string[] }[] = [
  {
    question: 'What moves, how far and how often, handling included?',
    itemIds: ['bend-use', 'flex-test-terms', 'handling-count'],
  },
  {
    question: 'Which class, type, use and temperatures?',
    itemIds: ['performance-class', 'circuit-type', 'operating-temperature', 'requirement-range'],
  },
  {
    question: 'Does each bend fit its place?',
    itemIds: [
      'bend-fit',
      'folded-clearance',
      'folded-envelope',
      'connector-targets',
      'fold-model',
      'fold-order-model',
      'enclosure-fit',
    ],
  },
  { question: 'Does each bend hold by strain or life?', itemIds: ['bend-strain', 'fatigue-life', 'damage-sum'] },
  {
    question: 'Which layers and planes run through each bend?',
    itemIds: ['conductor-layers-in-bend', 'unbonded-leaves'],
  },
  { question: 'Which foil and plating are there?', itemIds: ['foil-type', 'plating-in-bend'] },
  {
    question: 'Are bends covered, and free of solder mask?',
    itemIds: ['bend-cover', 'copper-encapsulation', 'solder-mask-in-bend'],
  },
  { question: 'What holds the radius, and how is it formed?', itemIds: ['radius-holder', 'forming'] },
  {
    question: 'Do the boards hold: adhesive, symmetry, holes?',
    itemIds: [
      'zone-joints',
      'flexible-adhesive-in-rigid',
      'flexible-adhesive-in-rigid-class-three',
      'stack-symmetry',
      'hole-aspect',
      'hole-plating',
    ],
  },
  {
    question: 'Does each connector end fit its connector?',
    itemIds: [
      'finger-thickness',
      'fitted-thickness',
      'finger-support',
      'surface-finish',
      'contact-geometry',
      'contact-finish',
    ],
  },
  {
    question: 'Where is impedance needed, and what carries the return?',
    itemIds: ['plane-in-bend', 'impedance-given', 'impedance-value', 'return-path'],
  },
  { question: 'Do currents and voltage drop hold?', itemIds: ['conductor-current', 'voltage-drop'] },
  {
    question: 'How is the part assembled and dried?',
    itemIds: ['floor-life', 'panel-form', 'carrier', 'solder-heat'],
  },
  { question: 'Are the materials on the shelf?', itemIds: ['stock-materials', 'material-call-outs'] },
  {
    question: 'Who builds it, when do they look, and who is asked?',
    itemIds: ['manufacturing-review', 'contact-person'],
  },
]
