import { readFileSync } from 'node:fs'
import { type Design, parseDesignText } from '@/lib/engine'

/** Reads a design file of the repository; a file that the reader refuses fails the test with its issues. */
export function readDesignFile(pathFromRoot: string): Design {
  const parsed = parseDesignText(readFileSync(pathFromRoot, 'utf8'))
  if (!parsed.ok) throw new Error(`${pathFromRoot}: ${JSON.stringify(parsed.issues)}`)
  return parsed.value
}

export const DEMO_DESIGNS = ['skua-rev-a', 'skua-rev-a-alternative', 'skua-rev-b', 'pipit-rev-a'] as const

/** A demo design with its plan: what is drawn stands before what was stated. */
export function readDrawnDesign(name: (typeof DEMO_DESIGNS)[number]): Design {
  return readDesignFile(`seed/designs/${name}.json`)
}

/** A demo design without its plan: each dimension is what was stated, so that a test can move one by itself. */
export function readDemoDesign(name: (typeof DEMO_DESIGNS)[number]): Design {
  return { ...readDrawnDesign(name), plan: null }
}
