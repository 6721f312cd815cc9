/**
 * What people send, as schemas: the same one serves the form, the server action and the data function.
 * Pure: client components may import it.
 */
export * from './accounts'
export * from './acts'
export * from './common'
export * from './companies'
export * from './confirmation'
export * from './declarations'
export * from './done'
export * from './door-texts'
export * from './drawings'
export * from './fabrication'
export * from './mail'
export * from './meetings'
export * from './own-path'
export * from './people'
export * from './proposals'
export * from './review'
export * from './review-actions'
export * from './revisions'
export * from './sign-off'
export * from './templates'
