'use server'

import { action } from '@/lib/server'

/** One act stores what any of the four engineering pages changed: they all edit the one design document. */
export const saveDesign = action('saveDesign', { turn: 'calculations' })
export const keepConstruction = action('keepConstruction')
