'use server'

import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action, actionOf, keepStep } from '@/lib/server'

export const changePassword = action('changePassword')
export const endSession = action('endSession')
export const signOutElsewhere = actionOf(inputs.actionInput, (actor) =>
  data.signOutEverywhere(actor, { exceptHere: true }),
)
export const signOutEverywhere = actionOf(inputs.actionInput, (actor) =>
  data.signOutEverywhere(actor, { exceptHere: false }),
)
export const setMailChoices = action('setMailChoices')
export const askForAddressChange = action('askForAddressChange')
export const beginCodeSetUp = action('beginCodeSetUp')
export const finishCodeSetUp = action('finishCodeSetUp')
export const removeCodes = action('removeCodes')
export const renewRecoveryCodes = action('renewRecoveryCodes')
export const beginPasskeySetUp = action('beginPasskeySetUp')
export const finishPasskeySetUp = action('finishPasskeySetUp')
export const removePasskey = action('removePasskey')
export const removeIdentity = action('removeIdentity')

/** The provider's answer comes back to this browser, which then holds the other half. */
export const beginIdentityLink = actionOf(inputs.ownPasswordInput, async (actor, input) => {
  const result = await data.beginIdentityLink(actor, input)
  if (!result.ok) return result
  await keepStep('identity-link', result.value.token)
  return { ok: true as const, value: null }
})
