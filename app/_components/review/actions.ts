'use server'

import { action } from '@/lib/server'

/** What people do to a revision from its review screens. Each names its schema and calls one data function. */
export const answerItem = action('answerItem')
export const proposeWaiver = action('proposeWaiver')
export const decideWaiver = action('decideWaiver')
export const removeAttachment = action('removeAttachment')
export const removeArtwork = action('removeArtwork')

export const openThread = action('openThread')
export const replyToThread = action('replyToThread')
export const closeThread = action('closeThread')
export const reopenThread = action('reopenThread')
export const editComment = action('editComment')

export const proposeChange = action('proposeChange', { turn: 'calculations' })
export const decideProposal = action('decideProposal', { turn: 'calculations' })
export const withdrawProposal = action('withdrawProposal')

export const takeOnAction = action('takeOnAction')
export const changeAction = action('changeAction')
export const reportAction = action('reportAction')
export const closeAction = action('closeAction')
export const dropAction = action('dropAction')
export const reopenAction = action('reopenAction')

export const declareReviewed = action('declareReviewed')
export const withdrawReview = action('withdrawReview')
export const followSignOffPolicy = action('followSignOffPolicy', { turn: 'calculations' })
export const declareBuildable = action('declareBuildable')
export const decideCondition = action('decideCondition')
export const takeOffRelease = action('takeOffRelease')
export const putBackOnRelease = action('putBackOnRelease')
export const advanceRevision = action('advanceRevision')
export const sendBackRevision = action('sendBackRevision')
export const withdrawRevision = action('withdrawRevision')
export const beginPasskeyConfirmation = action('beginPasskeyConfirmation')
export const signRevision = action('signRevision')
export const withdrawSignature = action('withdrawSignature')
export const updateTemplate = action('updateTemplate', { turn: 'calculations' })
export const releaseRevision = action('releaseRevision', { turn: 'documents' })
export const shareRevision = action('shareRevision')
export const unshareRevision = action('unshareRevision')
export const evaluateAgain = action('evaluateAgain', { turn: 'calculations' })
