/** The first pages come before it. */
const REHEARSE_AFTER_MS = 3_000

/** Called by the framework once, when the server starts. */
export async function register(): Promise<void> {
  // biome-ignore lint/style/noProcessEnv: a word of the framework that it fills in while it builds, and no setting
  if (process.env.NEXT_RUNTIME === 'nodejs') {
    const { markConnections } = await import('@/lib/server/connection')
    const { followRequest } = await import('@/lib/server/request-log')
    markConnections(followRequest)
    const { listSettingWarnings, log } = await import('@/lib/config')
    for (const warning of listSettingWarnings()) log.warn('setting', { warning })
    const { stopInGoodOrder } = await import('@/lib/server/stopping')
    stopInGoodOrder()
    const { adoptOlderState } = await import('@/lib/data')
    await adoptOlderState()
    const { startMailWorker } = await import('@/lib/server/mail/worker')
    startMailWorker()
    const { startFileSweeper } = await import('@/lib/server/file-sweeper')
    startFileSweeper()
    const { startJobs } = await import('@/lib/server/jobs/start-jobs')
    startJobs()
    const { rehearseJobs } = await import('@/lib/jobs')
    setTimeout(
      () => rehearseJobs().catch((error) => log.warn('jobs could not be rehearsed', { error })),
      REHEARSE_AFTER_MS,
    ).unref()
    const { startStandings } = await import('@/lib/server/standings-worker')
    startStandings()
  }
}
