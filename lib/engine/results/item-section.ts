/** The parts of the catalogue, in the order of the checklist, the report and the reference page. */
export const ITEM_SECTIONS = ['materials', 'geometry', 'fabrication'] as const
export type ItemSection = (typeof ITEM_SECTIONS)[number]

export const ITEM_SECTION_WORDS: Readonly<Record<ItemSection, string>> = {
  materials: 'Materials',
  geometry: 'Geometry',
  fabrication: 'Fabrication communication',
}
