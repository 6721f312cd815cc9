'use server'

import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action } from '@/lib/server'

/** One act stores what any of the four engineering pages changed: they all edit the one design document. */
export const saveDesign = action(inputs.saveDesignInput, data.saveDesign, { turn: 'calculations' })
