import 'server-only'

export { writeStep } from './step/write-step'
/** The folded part as files for mechanical colleagues. */
export { writeGlb } from './write-glb'
