'use server'

import { action } from '@/lib/server'

export const createProject = action('createProject')
export const changeProject = action('changeProject')
export const archiveProject = action('archiveProject')
export const createInvitation = action('createInvitation')
export const revokeInvitation = action('revokeInvitation')
export const setMembershipRole = action('setMembershipRole')
export const removeMember = action('removeMember')
export const createRevision = action('createRevision', { turn: 'calculations' })
