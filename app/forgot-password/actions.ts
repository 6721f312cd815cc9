'use server'

import * as data from '@/lib/data'
import { askForResetInput } from '@/lib/inputs'
import { visitorAction } from '@/lib/server'

export const askForReset = visitorAction(askForResetInput, data.askForReset)
