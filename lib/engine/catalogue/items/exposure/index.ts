import type { ItemDefinition } from '../../define-item'
import { antenna } from './antenna'
import { cleanliness } from './cleanliness'
import { coldMotion } from './cold-motion'
import { esdEntry } from './esd-entry'
import { fluids } from './fluids'
import { moistureSweat } from './moisture-sweat'
import { outgassing } from './outgassing'
import { pullLoad } from './pull-load'
import { skinContact } from './skin-contact'

/** What a part meets in service, asked only with a profile; by section. */
export const MATERIALS_EXPOSURE: readonly ItemDefinition[] = [outgassing, skinContact, fluids]
export const GEOMETRY_EXPOSURE: readonly ItemDefinition[] = [moistureSweat, antenna]
export const FABRICATION_EXPOSURE: readonly ItemDefinition[] = [cleanliness, esdEntry, pullLoad, coldMotion]
