export * from './evaluation'
export * from './outcome'
export * from './result'
export { liftEvaluation, readStoredEvaluation } from './stored'
