import { readFileSync } from 'node:fs'
import { parseDesignText } from '@/lib/engine'
import { searchRemedies } from '@/lib/engine/remedies'
import { ROOT } from './root'

/** What somebody waits who seeks remedies first: nothing is compiled yet. Then again, as from a thread that is kept. */
const TARGET_MS = 2000

const parsed = parseDesignText(readFileSync(new URL('seed/designs/skua-rev-a.json', ROOT), 'utf8'))
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
const { value: design } = parsed

function run(what: string): void {
  const [start, processorStart] = [performance.now(), process.cpuUsage()]
  const write = (when: string): void => {
    const { user, system } = process.cpuUsage(processorStart)
    const processorMs = (user + system) / 1000
    process.stdout.write(
      `${`${what}, ${when}`.padEnd(44)} ${(performance.now() - start).toFixed(0).padStart(6)} ms, processor ${processorMs.toFixed(0).padStart(6)} ms: ${(processorMs / TARGET_MS).toFixed(2)} of the target of ${TARGET_MS} ms\n`,
    )
  }
  const search = searchRemedies(design, 'hinge')
  for (;;) {
    const step = search.next()
    if (step.done === true) break
    if (step.value.lead !== undefined) write('until it says what leads')
  }
  write('whole')
}

run('remedies of skua-rev-a, cold')
run('the same again')
run('and again')
