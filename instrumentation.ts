/** Called by the framework once, when the server starts. */
export async function register(): Promise<void> {
  // biome-ignore lint/style/noProcessEnv: a word of the framework that it fills in while it builds, and no setting
  if (process.env.NEXT_RUNTIME === 'nodejs') {
    const { markConnections } = await import('@/lib/server/connection')
    markConnections()
    const { adoptOlderState } = await import('@/lib/data')
    await adoptOlderState()
    const { startMailWorker } = await import('@/lib/server/mail/worker')
    startMailWorker()
    const { startFileSweeper } = await import('@/lib/server/file-sweeper')
    startFileSweeper()
    const { startJobs } = await import('@/lib/server/jobs/start-jobs')
    startJobs()
  }
}
