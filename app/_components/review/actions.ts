'use server'

import * as data from '@/lib/data'
import * as inputs from '@/lib/inputs'
import { action } from '@/lib/server'

/** What people do to a revision from its review screens. Each names its schema and calls one data function. */
export const answerItem = action(inputs.answerItemInput, data.answerItem)
export const proposeWaiver = action(inputs.proposeWaiverInput, data.proposeWaiver)
export const decideWaiver = action(inputs.decideWaiverInput, data.decideWaiver)
export const removeAttachment = action(inputs.removeFileInput, data.removeAttachment)
export const removeArtwork = action(inputs.removeFileInput, data.removeArtwork)

export const openThread = action(inputs.openThreadInput, data.openThread)
export const replyToThread = action(inputs.replyInput, data.replyToThread)
export const closeThread = action(inputs.closeThreadInput, data.closeThread)
export const reopenThread = action(inputs.reopenThreadInput, data.reopenThread)
export const editComment = action(inputs.editCommentInput, data.editComment)

export const proposeChange = action(inputs.proposeChangeInput, data.proposeChange, { turn: 'calculations' })
export const decideProposal = action(inputs.decideProposalInput, data.decideProposal, { turn: 'calculations' })
export const withdrawProposal = action(inputs.withdrawProposalInput, data.withdrawProposal)

export const declareBuildable = action(inputs.declarationInput, data.declareBuildable)
export const advanceRevision = action(inputs.advanceInput, data.advanceRevision)
export const sendBackRevision = action(inputs.sendBackInput, data.sendBackRevision)
export const withdrawRevision = action(inputs.withdrawInput, data.withdrawRevision)
export const beginPasskeyConfirmation = action(inputs.passkeyConfirmationInput, data.beginPasskeyConfirmation)
export const signRevision = action(inputs.signInputSchema, data.signRevision)
export const withdrawSignature = action(inputs.withdrawSignatureInput, data.withdrawSignature)
export const updateTemplate = action(inputs.updateTemplateInput, data.updateTemplate, { turn: 'calculations' })
export const releaseRevision = action(inputs.releaseInput, data.releaseRevision, { turn: 'documents' })
export const shareRevision = action(inputs.shareRevisionInput, data.shareRevision)
export const unshareRevision = action(inputs.shareRevisionInput, data.unshareRevision)
export const evaluateAgain = action(inputs.evaluateAgainInput, data.evaluateAgain, { turn: 'calculations' })
