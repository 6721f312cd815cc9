'use server'

import { z } from 'zod'
import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action, keepStep } from '@/lib/server'

const nothingInput = z.strictObject({ requestKey: inputs.requestKeySchema })

export const changePassword = action(inputs.changePasswordInput, data.changePassword)
export const endSession = action(inputs.endSessionInput, data.endSession)
export const signOutElsewhere = action(nothingInput, (actor) => data.signOutEverywhere(actor, { exceptHere: true }))
export const signOutEverywhere = action(nothingInput, (actor) => data.signOutEverywhere(actor, { exceptHere: false }))
export const setMailChoices = action(inputs.mailChoicesInput, data.setMailChoices)
export const askForAddressChange = action(inputs.changeAddressInput, data.askForAddressChange)
export const beginCodeSetUp = action(inputs.ownPasswordInput, data.beginCodeSetUp)
export const finishCodeSetUp = action(inputs.codeSetUpInput, data.finishCodeSetUp)
export const removeCodes = action(inputs.ownPasswordInput, data.removeCodes)
export const renewRecoveryCodes = action(inputs.ownPasswordInput, data.renewRecoveryCodes)
export const beginPasskeySetUp = action(inputs.ownPasswordInput, data.beginPasskeySetUp)
export const finishPasskeySetUp = action(inputs.passkeySetUpInput, data.finishPasskeySetUp)
export const removePasskey = action(inputs.removePasskeyInput, data.removePasskey)
export const removeIdentity = action(inputs.ownPasswordInput, data.removeIdentity)

/** The provider's answer comes back to this browser, which then holds the other half. */
export const beginIdentityLink = action(inputs.ownPasswordInput, async (actor, input) => {
  const outcome = await data.beginIdentityLink(actor, input)
  if (!outcome.ok) return outcome
  await keepStep('identity-link', outcome.value.token)
  return { ok: true as const, value: null }
})
