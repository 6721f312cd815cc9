'use server'

import { action } from '@/lib/server'

export const rotateSigningKey = action('rotateSigningKey')
export const reportKeyCompromised = action('reportKeyCompromised')
