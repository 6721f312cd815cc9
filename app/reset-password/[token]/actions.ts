'use server'

import * as data from '@/lib/data'
import { setPasswordInput } from '@/lib/inputs'
import { visitorAction } from '@/lib/server'

export const setPassword = visitorAction(setPasswordInput, data.setPasswordByLink)
