import { readFileSync } from 'node:fs'
import { type Design, parseDesignText } from '@/lib/engine'

/** Reads a design file of the repository; a file that the reader refuses fails the test with its issues. */
export function readDesignFile(pathFromRoot: string): Design {
  const parsed = parseDesignText(readFileSync(pathFromRoot, 'utf8'))
  if (!parsed.ok) throw new Error(`${pathFromRoot}: ${JSON.stringify(parsed.issues)}`)
  return parsed.value
}

export const DEMO_DESIGNS = ['skua-rev-a', 'skua-rev-a-alternative', 'skua-rev-b', 'pipit-rev-a'] as const

export function readDemoDesign(name: (typeof DEMO_DESIGNS)[number]): Design {
  return readDesignFile(`seed/designs/${name}.json`)
}

/** A demo design without its plan: each dimension is what was stated, so that a test can move it by itself. */
export function readStatedDesign(name: (typeof DEMO_DESIGNS)[number]): Design {
  return { ...readDemoDesign(name), plan: null }
}
