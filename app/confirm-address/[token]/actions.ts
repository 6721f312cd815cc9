'use server'

import * as data from '@/lib/data'
import { tokenInput } from '@/lib/inputs'
import { visitorAction } from '@/lib/server'

export const confirmAddress = visitorAction(tokenInput, data.confirmAddress)
