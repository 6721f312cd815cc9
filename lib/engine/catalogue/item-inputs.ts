/**
 * Inputs that an item rests on: their change makes an earlier answer worth another look.
 *
 * A pattern names a part of the design document by keys; `*` stands for the id of any entry of a list, and a pattern covers
 * everything below it. Names and notes count only where a pattern ends in them: a renamed bend bends as before. `artwork` is
 * the set of artwork files.
 */
export type InputPattern = 'artwork' | InDesign | `${InDesign}.${string}`

type InDesign = 'brief' | 'materials' | 'construction' | 'bends' | 'features' | 'plan'

/** Everything that a section through the part is made of. */
export const SECTION_INPUTS = ['construction.layers', 'construction.zones', 'materials'] as const

/** Where bends lie and how far they go. */
export const BEND_PLACE_INPUTS = ['bends.*.zoneId', 'bends.*.insideRadiusMm', 'bends.*.angleDeg'] as const

export const TEMPERATURE_INPUTS = ['brief.operatingMinDegC', 'brief.operatingMaxDegC'] as const

/** Of an item whose meaning the program does not know, such as a workspace's own: better asked once too often. */
export const ALL_INPUTS = ['brief', 'materials', 'construction', 'bends', 'features', 'plan', 'artwork'] as const

/** What says which impedance a conductor needs: its own statements, and its class's. */
export const IMPEDANCE_INPUTS = [
  'features.conductors.*.impedanceOhm',
  'features.conductors.*.impedance',
  'features.conductors.*.netClassId',
  'features.netClasses',
] as const
