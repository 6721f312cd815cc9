'use server'

import * as data from '@/lib/data'
import { acceptInvitationInput, joinByInvitationInput } from '@/lib/inputs'
import { action, joiningAction } from '@/lib/server'

export const acceptInvitation = joiningAction(acceptInvitationInput, 'invitation', data.acceptInvitation)
export const joinByInvitation = action(joinByInvitationInput, data.joinByInvitation)
