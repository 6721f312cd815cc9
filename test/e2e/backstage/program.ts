// Runs acts for browser tests: one message in, one message out. Forked by index.ts.
import { runJobsInPlace } from '@/lib/jobs'
import { acts } from './acts'

interface Call {
  readonly id: number
  readonly act: keyof typeof acts
  readonly input: unknown
}

// No bundler made a thread's program here.
runJobsInPlace()

process.on('message', async ({ id, act, input }: Call) => {
  try {
    // The caller's types tie each act to its input; across the two processes that cannot be shown to the compiler.
    const run = acts[act] as (input: unknown) => Promise<unknown>
    process.send?.({ id, value: (await run(input)) ?? null })
  } catch (error) {
    process.send?.({ id, problem: String(error instanceof Error ? error.stack : error) })
  }
})
