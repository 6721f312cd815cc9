'use server'

import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action } from '@/lib/server'

export const inviteToCompany = action(inputs.companyInvitationInput, data.inviteToCompany)
export const revokeInvitation = action(inputs.revokeInvitationInput, data.revokeInvitation)
export const setCompanyRole = action(inputs.companyRoleInput, data.setCompanyRole)
export const removeCompanyPerson = action(inputs.removeCompanyPersonInput, data.removeCompanyPerson)
export const decideParticipation = action(inputs.decideParticipationInput, data.decideParticipation)
export const setCompanySharing = action(inputs.companySharingInput, data.setCompanySharing)
export const bringToProject = action(inputs.bringToProjectInput, data.bringToProject)
export const confirmCompany = action(inputs.confirmCompanyInput, data.confirmCompany)
