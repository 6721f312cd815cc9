import { cpSync, mkdirSync, rmSync } from 'node:fs'
import path from 'node:path'
import { makeShortLivedFolder } from '../setup/short-lived-folder.mjs'
import { findDemoData } from './demo-data'
import { startOwnServer } from './own-server'

export interface ServerUnderTest {
  readonly address: string
  readonly dataFolder: string
  readonly stop: () => Promise<void>
}

/**
 * A server on a fresh copy of the demo data. What it prints goes to the file: tests provoke errors that it logs at length, and nobody reads
 * them in a run that passes.
 */
export async function startServerUnderTest(logFile: string): Promise<ServerUnderTest> {
  const dataFolder = makeShortLivedFolder('bendworthy-e2e-')
  // Copies the rights of each file too: a test looks at them.
  cpSync(findDemoData(), dataFolder, { recursive: true })
  mkdirSync(path.dirname(logFile), { recursive: true })
  const { address, stop } = await startOwnServer({ dataFolder, logFile })
  return {
    address,
    dataFolder,
    stop: async () => {
      await stop()
      rmSync(dataFolder, { recursive: true, force: true })
    },
  }
}
