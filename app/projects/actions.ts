'use server'

import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action } from '@/lib/server'

export const createProject = action(inputs.projectInput, data.createProject)
export const createInvitation = action(inputs.invitationInput, data.createInvitation)
export const revokeInvitation = action(inputs.revokeInvitationInput, data.revokeInvitation)
export const setMembershipRole = action(inputs.membershipRoleInput, data.setMembershipRole)
export const removeMember = action(inputs.removeMemberInput, data.removeMember)
export const createRevision = action(inputs.newRevisionInput, data.createRevision, { turn: 'calculations' })
