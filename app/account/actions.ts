'use server'

import { z } from 'zod'
import * as data from '@/lib/data'
import { changePasswordInput, mailChoicesInput, requestKeySchema } from '@/lib/inputs'
import { action, renewSession } from '@/lib/server'

/** Ends every other session; the one in this browser goes on. */
export const changePassword = action(changePasswordInput, async (actor, input) => {
  const outcome = await data.changePassword(actor, input)
  if (outcome.ok) await renewSession(actor, outcome.value.sessionVersion)
  return outcome
})

export const endOtherSessions = action(z.strictObject({ requestKey: requestKeySchema }), async (actor) => {
  const outcome = await data.signOutEverywhere(actor)
  if (outcome.ok) await renewSession(actor, outcome.value.sessionVersion)
  return outcome
})

export const setMailChoices = action(mailChoicesInput, data.setMailChoices)
