import { SettingsError } from '@/lib/config'
import { MigrationError } from '@/lib/data/store/migration'

/**
 * Run the body of a maintenance command. What the person can mend ends it with its message alone and exit status 1;
 * anything else is a defect and keeps its stack.
 */
export async function runTask(body: () => Promise<void>): Promise<void> {
  try {
    await body()
  } catch (error) {
    const mendable = error instanceof SettingsError || error instanceof MigrationError || error instanceof RangeError
    console.error(mendable ? error.message : error)
    process.exitCode = 1
  }
}
