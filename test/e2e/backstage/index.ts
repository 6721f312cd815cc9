import { fork } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Acts } from './acts'

type Answer = { readonly id: number } & ({ readonly value: unknown } | { readonly problem: string })

export interface Backstage {
  readonly act: <K extends keyof Acts>(name: K, ...input: Parameters<Acts[K]>) => Promise<Awaited<ReturnType<Acts[K]>>>
  readonly close: () => void
}

/** Starts the program that acts behind the scenes, on the same data folder as the server under test. */
export function openBackstage(dataFolder: string, publicUrl: string, databaseUrl = ''): Backstage {
  const child = fork(fileURLToPath(new URL('./program.ts', import.meta.url)), {
    // The condition lets server-only modules load; the loader runs TypeScript.
    execArgv: ['--conditions=react-server', '--import', 'tsx'],
    env: {
      ...process.env,
      BENDWORTHY_DATA_FOLDER: dataFolder,
      BENDWORTHY_PUBLIC_URL: publicUrl,
      DATABASE_URL: databaseUrl,
      // Playwright's own loader must not be preloaded into it.
      NODE_OPTIONS: '',
    },
  })
  const waiting = new Map<number, (answer: Answer) => void>()
  child.on('message', (answer: Answer) => {
    waiting.get(answer.id)?.(answer)
    waiting.delete(answer.id)
  })
  child.on('exit', (code) => {
    for (const [id, settle] of waiting) settle({ id, problem: `the program behind the scenes ended (${code})` })
    waiting.clear()
  })
  let count = 0
  return {
    act(name, ...input) {
      count += 1
      const id = count
      return new Promise((resolve, reject) => {
        waiting.set(id, (answer) => {
          if ('problem' in answer) reject(new Error(`${name}: ${answer.problem}`))
          else resolve(answer.value as Awaited<ReturnType<Acts[typeof name]>>)
        })
        child.send({ id, act: name, input: input[0] ?? {} })
      })
    },
    close: () => child.kill(),
  }
}
