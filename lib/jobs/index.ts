/** Work off the request path: one pool of worker threads, one table of kinds. */
export { JobCrashedError, JobLimitError, JobStoppedError } from './errors'
export type { JobOptions } from './kind'
export type { ArtworkOrder, EvaluationOrder, NestingOrder, RemedyOrder, SubstituteOrder, WayOutOrder } from './orders'
export { rehearseJobs, runJob, runJobsInPlace } from './runner'
