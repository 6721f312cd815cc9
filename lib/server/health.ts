import 'server-only'
import { access, constants } from 'node:fs/promises'
import { getSettings, log } from '@/lib/config'
import { isDatabaseThere } from '@/lib/data'
import { getStopSignal } from './stopping'

const LONGEST_MS = 3_000

/** One thing that a request needs, and whether it is there. */
type Checks = Readonly<Record<'database' | 'dataFolder' | 'notStopping', boolean>>

/** Whether this process should be sent requests now. The answer names no address, path or version: anybody may ask. */
export async function getReadiness(): Promise<{ readonly isReady: boolean; readonly checks: Checks }> {
  const [database, dataFolder] = await Promise.all([
    inTime(isDatabaseThere(), 'database'),
    inTime(canWriteDataFolder(), 'data folder'),
  ])
  const checks = { database, dataFolder, notStopping: !getStopSignal().aborted }
  return { isReady: Object.values(checks).every(Boolean), checks }
}

async function canWriteDataFolder(): Promise<boolean> {
  await access(getSettings().dataFolder, constants.W_OK | constants.X_OK)
  return true
}

async function inTime(work: Promise<boolean>, what: string): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${LONGEST_MS} ms`)), LONGEST_MS)
  })
  try {
    return await Promise.race([work, late])
  } catch (error) {
    log.warn('not ready', { what, error })
    return false
  } finally {
    clearTimeout(timer)
  }
}
