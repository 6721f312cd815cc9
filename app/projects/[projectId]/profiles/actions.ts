'use server'

import { action } from '@/lib/server'

export const chooseProfiles = action('chooseProfiles')
