export * from './compare'
export * from './contents'
export * from './kinds'
export * from './row-keys'
