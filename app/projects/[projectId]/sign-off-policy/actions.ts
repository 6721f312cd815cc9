'use server'

import { action } from '@/lib/server'

export const setSignOffPolicy = action('setSignOffPolicy', { turn: 'calculations' })
