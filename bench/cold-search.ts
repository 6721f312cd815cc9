import { readFileSync } from 'node:fs'
import { parseDesignText } from '@/lib/engine'
import { findRemedies, searchRemedies } from '@/lib/engine/remedies'
import { makeRemedyRehearsal } from '@/lib/jobs/rehearsal'
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

// npm run bench -- cold rehearsed: as after the start of a server.
if (process.argv[3] === 'rehearsed') {
  const { design: plain, bendId } = makeRemedyRehearsal()
  for (let at = 0; at < 2; at += 1) findRemedies(plain, bendId)
}
run(`remedies of skua-rev-a, ${process.argv[3] ?? 'cold'}`)
run('the same again')
run('and again')
