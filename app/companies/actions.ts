'use server'

import { action } from '@/lib/server'

export const inviteToCompany = action('inviteToCompany')
export const revokeInvitation = action('revokeInvitation')
export const setCompanyRole = action('setCompanyRole')
export const removeCompanyPerson = action('removeCompanyPerson')
export const decideParticipation = action('decideParticipation')
export const setCompanySharing = action('setCompanySharing')
export const bringToProject = action('bringToProject')
export const confirmCompany = action('confirmCompany')
