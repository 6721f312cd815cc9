'use server'

import * as data from '@/lib/data'
import { sendMailAgainInput } from '@/lib/inputs'
import { action } from '@/lib/server'

export const sendMailAgain = action(sendMailAgainInput, data.sendMailAgain)
