'use server'

import * as data from '@/lib/data'
import { acceptInvitationInput, joinByInvitationInput } from '@/lib/inputs'
import { action, visitorAction } from '@/lib/server'

export const acceptInvitation = visitorAction(acceptInvitationInput, data.acceptInvitation)
export const joinByInvitation = action(joinByInvitationInput, data.joinByInvitation)
