'use server'

import * as data from '@/lib/data'
import { limitInput } from '@/lib/inputs'
import { action } from '@/lib/server'

export const setLimit = action(limitInput, data.setLimit)
