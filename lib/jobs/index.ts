/** Work off the request path: one pool of worker threads, one table of kinds. */
export { JobCrashedError, JobLimitError, JobStoppedError } from './errors'
export type { JobInput, JobOptions, JobOutput } from './kind'
export type { EvaluationOrder, JobKinds, NestingOrder, RemedyOrder } from './kinds'
export { runJob, runJobsInPlace } from './runner'
