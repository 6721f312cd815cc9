'use server'

import { action } from '@/lib/server'

export const setLimit = action('setLimit')
