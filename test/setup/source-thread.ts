import { Worker } from 'node:worker_threads'

/**
 * A thread that runs a program of the sources. Commands have a loader for TypeScript, which their threads inherit, and the built
 * server has none to load; the tests' runner is neither, so the thread registers the commands' loader first.
 */
export function startSourceThread(program: URL, memoryMib: number): Worker {
  return new Worker(
    `import('tsx/esm/api').then(({ register }) => {
      register()
      return import(${JSON.stringify(program.href)})
    })`,
    {
      eval: true,
      execArgv: ['--conditions=react-server'],
      resourceLimits: { maxOldGenerationSizeMb: memoryMib },
    },
  )
}
