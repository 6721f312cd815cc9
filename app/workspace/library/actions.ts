'use server'

import { action } from '@/lib/server'

export const saveOwnMaterial = action('saveOwnMaterial')
export const withdrawLibraryEntry = action('withdrawLibraryEntry')
