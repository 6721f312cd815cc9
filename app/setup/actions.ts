'use server'

import * as data from '@/lib/data'
import { firstAdminInput } from '@/lib/inputs'
import { joiningAction } from '@/lib/server'

export const createFirstAdmin = joiningAction(firstAdminInput, 'set-up', data.createFirstAdmin)
