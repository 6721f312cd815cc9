'use server'

import { action } from '@/lib/server'

export const saveSheet = action('saveSheet', { turn: 'calculations' })
