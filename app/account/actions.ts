'use server'

import { z } from 'zod'
import * as data from '@/lib/data'
import { changePasswordInput, endSessionInput, mailChoicesInput, requestKeySchema } from '@/lib/inputs'
import { action } from '@/lib/server'

const nothingInput = z.strictObject({ requestKey: requestKeySchema })

export const changePassword = action(changePasswordInput, data.changePassword)
export const endSession = action(endSessionInput, data.endSession)
export const signOutElsewhere = action(nothingInput, (actor) => data.signOutEverywhere(actor, { exceptHere: true }))
export const signOutEverywhere = action(nothingInput, (actor) => data.signOutEverywhere(actor, { exceptHere: false }))
export const setMailChoices = action(mailChoicesInput, data.setMailChoices)
