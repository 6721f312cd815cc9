'use server'

import * as data from '@/lib/data'
import { firstAdminInput } from '@/lib/inputs'
import { visitorAction } from '@/lib/server'

export const createFirstAdmin = visitorAction(firstAdminInput, data.createFirstAdmin)
