import 'server-only'
import { isLoopbackOnly } from '@/lib/config'
import { type DemoAccount, listDemoAccounts } from '@/lib/data'

/** People of the demo scenario that can sign in here; none when other machines can reach the server. */
export async function listDemoSignIns(): Promise<readonly DemoAccount[]> {
  return isLoopbackOnly() ? listDemoAccounts() : []
}
