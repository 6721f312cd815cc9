import { JOB_KINDS } from './kinds'
import { serveJobs } from './serve'

// The program of a thread of the pool.
serveJobs(JOB_KINDS)
