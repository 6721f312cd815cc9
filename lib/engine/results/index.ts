export * from './evaluation'
export * from './outcome'
export * from './result'
