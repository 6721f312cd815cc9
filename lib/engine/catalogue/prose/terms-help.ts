/** What helps with terms and exposure, cheapest first. Common practice, no published source. */
export const TERMS_HELP: Readonly<Record<string, readonly string[]>> = {
  'test-terms': [
    'State the three numbers; ask the fabricator which voltage the tester reaches.',
    'Raise the continuity limit above what the longest conductor has.',
  ],
  'test-access': ['Move probe points onto rigid or stiffened zones.', 'Widen the stiffener under them.'],
  marking: [
    'Mark the packing instead of the part.',
    'Move the marking to a rigid or stiffened zone.',
    'Enlarge letters, lines or the distance to pads{by}.',
  ],
  'finish-terms': ['State specification and thickness of each metal.', 'Order to the specification of this finish.'],
  'bow-and-twist': [
    'Narrow the limit on the drawing.',
    'Balance copper and film on both faces.',
    'Use a stiffer stiffener.',
  ],
  'via-structure': ['State first and last layer of each kind of hole.', 'Use through holes alone.'],
  'rework-grade': ['State solderings and removals.', 'Hold lands down by the coverlay, and enlarge them.'],
  'first-article': ['Agree who measures, and how many pieces.', 'Have an independent laboratory cut the sections.'],
  'change-control': ['Ask for approval of changes of material.', 'Put the list on the order.'],
  substitutes: ['Agree on the same specification sheet instead of any equivalent.', 'Ask first for what bends.'],
  substances: ['Ask the person responsible for compliance.', 'State what is kept out, and what is declared.'],
  precedence: ['Agree the order of documents, and put it on the order.'],
  'tooling-change': [
    'Widen edge distances and corners to the tolerances of the series tool.',
    'Cut the series by the tool of the prototype.',
  ],
  lessons: ['Go through the findings of the earlier part, and note what was done.'],
  'flame-class': [
    'Ask the fabricator for a construction that it has the class for.',
    'Change film or adhesive to one of such a construction.',
    'Have this construction tested.',
  ],
  outgassing: ['Ask for a low-outgassing adhesive or film.', 'Bake the part in vacuum, and measure again.'],
  'skin-contact': [
    'Cover the open finish where the part is worn.',
    'Take a finish without nickel.',
    'Have film, adhesive and ink evaluated.',
  ],
  'moisture-sweat': ['Move copper away from the edge{by}.', 'Seal edges by a coating, potting or the housing.'],
  cleanliness: ['Dry at a lower temperature, for longer.', 'Agree limit, cleaning and drying with the assembler.'],
  antenna: ['Move metal away from the antenna{by}.', 'Cut planes and stiffeners back.', 'Fold the other way.'],
  'esd-entry': ['Lay a guard conductor around the edge.', 'Put a suppressor at the connector.'],
  'pull-load': ['Add a tab, or a reinforced hole.', 'Extend the stiffener beyond the connector.'],
  'cold-motion': ['Test flexing at the lowest temperature.', 'Enlarge the radius, or take an adhesiveless clad.'],
  fluids: ['Cover or seal the part.', 'Take film and adhesive that withstand it.'],
}
