import type { ItemExample } from '../item-example'

export const partsPerPanelExamples: readonly ItemExample[] = [
  { name: 'two thirds used', facts: { panelUtilisationFraction: 0.66, partsPerPanel: 84 }, expect: 'meets' },
  { name: 'a quarter used', facts: { panelUtilisationFraction: 0.25, partsPerPanel: 20 }, expect: 'fails' },
  { name: 'not nested', expect: 'needs-judgment' },
]
