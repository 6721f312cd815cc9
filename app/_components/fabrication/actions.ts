'use server'

import { action } from '@/lib/server'

export const saveSheet = action('saveSheet', { turn: 'calculations' })
export const restoreSheetVersion = action('restoreSheetVersion', { turn: 'calculations' })
