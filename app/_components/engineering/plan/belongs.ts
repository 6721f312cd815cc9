import { type Design, listStiffeners } from '@/lib/engine'
import type { PlanEntry, PlanListKey } from '@/lib/plan/edit'

/** The field by which something drawn names what it draws, and what there is of the kind. */
interface Belonging {
  readonly field: string
  readonly label: string
  readonly list: (design: Design) => readonly { readonly id: string; readonly name: string }[]
  /** Where one is added that is not there yet; null where drawing it makes one. */
  readonly addedOn: string | null
  /** Whether it may belong to nothing yet. */
  readonly isOptional: boolean
}

export const BELONGS: Partial<Record<PlanListKey, Belonging>> = {
  areas: {
    field: 'zoneId',
    label: 'Zone',
    list: ({ construction }) => construction.zones,
    addedOn: null,
    isOptional: true,
  },
  bendLines: { field: 'bendId', label: 'Bend', list: ({ bends }) => bends, addedOn: null, isOptional: false },
  stiffeners: {
    field: 'stiffenerId',
    label: 'Stiffener',
    list: listStiffeners,
    addedOn: 'Features',
    isOptional: false,
  },
  slits: { field: 'slitId', label: 'Slit', list: ({ features }) => features.slits, addedOn: null, isOptional: true },
  holes: {
    field: 'holeId',
    label: 'Hole',
    list: ({ features }) => features.holes,
    addedOn: 'Features',
    isOptional: false,
  },
  pads: { field: 'padId', label: 'Pad', list: ({ features }) => features.pads, addedOn: 'Features', isOptional: false },
  coverlayOpenings: {
    field: 'openingId',
    label: 'Opening',
    list: ({ features }) => features.coverlayOpenings,
    addedOn: 'Features',
    isOptional: false,
  },
  components: {
    field: 'componentId',
    label: 'Component',
    list: ({ features }) => features.components,
    addedOn: 'Features',
    isOptional: false,
  },
  connectorEnds: {
    field: 'connectorId',
    label: 'Connector',
    list: ({ features }) => features.connectors,
    addedOn: 'Features',
    isOptional: false,
  },
  corners: {
    field: 'cornerId',
    label: 'Corner',
    list: ({ features }) => features.outlineCorners,
    addedOn: 'Features',
    isOptional: false,
  },
  routes: {
    field: 'conductorId',
    label: 'Conductor',
    list: ({ features }) => features.conductors,
    addedOn: 'Features',
    isOptional: false,
  },
}

/** What an entry is called: by what it belongs to, else by its own name, else by its id. */
export function nameEntry(design: Design, list: PlanListKey, entry: PlanEntry): string {
  const fields = entry as unknown as Readonly<Record<string, unknown>>
  if (typeof fields.name === 'string' && fields.name !== '') return fields.name
  const belongs = BELONGS[list]
  const id = belongs === undefined ? null : fields[belongs.field]
  const owner = belongs?.list(design).find((candidate) => candidate.id === id)
  if (owner !== undefined) return owner.name
  if (typeof fields.text === 'string' && fields.text.trim() !== '') return fields.text.split('\n')[0] ?? entry.id
  return typeof fields.letter === 'string' ? fields.letter : entry.id
}
