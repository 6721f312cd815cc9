import 'server-only'
import { type DemoAccount, listDemoAccounts } from '@/lib/data'
import { getVisit } from './visit'

/** People of the demo scenario that can sign in from where this request comes from; none from another machine. */
export async function listDemoSignIns(): Promise<readonly DemoAccount[]> {
  return (await getVisit()).isThisMachine ? listDemoAccounts() : []
}
