import 'server-only'

/** The folded part as files for mechanical colleagues. */
export { writeGlb } from './write-glb'
export { writeStep } from './step/write-step'
