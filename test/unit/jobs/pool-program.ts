import { serveJobs } from '@/lib/jobs/serve'
import { TEST_KINDS } from './test-kinds'

// A thread that carries out the tests' own kinds of job.
serveJobs(TEST_KINDS)
