'use server'

import * as data from '@/lib/data'
import { saveSheetInput } from '@/lib/inputs'
import { action } from '@/lib/server'

export const saveSheet = action(saveSheetInput, data.saveSheet, { turn: 'calculations' })
