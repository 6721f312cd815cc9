'use server'

import { action } from '@/lib/server'

export const grantCapacity = action('grantCapacity')
export const withdrawCapacity = action('withdrawCapacity')
