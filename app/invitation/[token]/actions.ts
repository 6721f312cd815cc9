'use server'

import * as data from '@/lib/data'
import { acceptInvitationInput } from '@/lib/inputs'
import { action, joiningAction } from '@/lib/server'

export const acceptInvitation = joiningAction(acceptInvitationInput, 'invitation', data.acceptInvitation)
export const joinByInvitation = action('joinByInvitation')
