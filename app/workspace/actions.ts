'use server'

import { z } from 'zod'
import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action } from '@/lib/server'

const nothingInput = z.strictObject({ requestKey: inputs.requestKeySchema })

export const changeSettings = action(inputs.settingsInput, data.changeSettings)
export const setAccountState = action(inputs.accountStateInput, data.setAccountState)
export const makeResetLink = action(inputs.accountInput, data.makeResetLink)
export const removeSecondFactor = action(inputs.accountInput, data.removeSecondFactor)
export const allowIdentity = action(inputs.accountInput, data.allowIdentity)
export const setAdminRight = action(inputs.adminRightInput, data.setAdminRight)
export const createBackup = action(nothingInput, (actor) => data.createBackup(actor))
export const checkTrail = action(nothingInput, async (actor) => ({
  ok: true as const,
  value: await data.checkWholeTrail(actor),
}))
