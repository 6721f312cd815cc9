'use server'

import { action } from '@/lib/server'

export const saveWorkspaceFlexTests = action('saveWorkspaceFlexTests')
