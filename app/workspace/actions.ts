'use server'

import * as data from '@/lib/data'
import { actionInput } from '@/lib/inputs'
import { action, actionOf } from '@/lib/server'

export const changeSettings = action('changeSettings')
export const setAccountState = action('setAccountState')
export const makeResetLink = action('makeResetLink')
export const removeSecondFactor = action('removeSecondFactor')
export const allowIdentity = action('allowIdentity')
export const setAdminRight = action('setAdminRight')
export const createBackup = action('createBackup')
export const checkTrail = actionOf(actionInput, async (actor) => ({
  ok: true as const,
  value: await data.checkWholeTrail(actor),
}))
