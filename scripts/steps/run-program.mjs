import { spawn } from 'node:child_process'
import { rootFolder } from './places.mjs'

/** A step that could not be done; its message is what the person should read, without a stack. */
export class StepError extends Error {}

/** @param {string} text */
export const say = (text) => process.stdout.write(`${text}\n`)

const FIRST_NEWS_MS = 15_000

/**
 * Run a program quietly: its output is kept and shown only when it fails. While it runs, a line after 15 s, 30 s, 60 s and
 * so on says that it still does.
 * @param {string} what  the step in words, such as "Installing packages"
 * @param {string} program
 * @param {string[]} args
 * @param {{ env?: Record<string, string | undefined>, quiet?: boolean, shell?: boolean }} [options]
 * @returns {Promise<{ output: string, seconds: number }>}
 * @throws {StepError} naming the step, with the end of what the program printed
 */
export function runQuietly(what, program, args, { env = {}, quiet = false, shell = false } = {}) {
  const started = performance.now()
  const seconds = () => Math.round((performance.now() - started) / 100) / 10
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: rootFolder,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      shell,
    })
    let output = ''
    const collect = (/** @type {Buffer} */ part) => {
      output += part.toString()
    }
    child.stdout.on('data', collect)
    child.stderr.on('data', collect)
    /** @type {NodeJS.Timeout} */
    let news
    const tellIn = (/** @type {number} */ waitMs) => {
      news = setTimeout(() => {
        say(`  ${what}: still going after ${Math.round(seconds())} s`)
        tellIn(performance.now() - started)
      }, waitMs)
    }
    if (!quiet) tellIn(FIRST_NEWS_MS)
    child.on('error', (error) => {
      clearTimeout(news)
      reject(new StepError(`${what} could not start ${program}: ${error.message}`))
    })
    child.on('close', (code, signal) => {
      clearTimeout(news)
      if (code === 0) resolve({ output, seconds: seconds() })
      else {
        const ending = output.trim().split('\n').slice(-40).join('\n')
        reject(new StepError(`${what} failed (${signal ?? `exit status ${code}`}). What it printed last:\n${ending}`))
      }
    })
  })
}

/**
 * Run a program with the terminal handed over to it.
 * @param {string} program
 * @param {string[]} args
 * @param {{ env?: Record<string, string | undefined> }} [options]
 * @returns {Promise<number>} its exit status
 */
export function runInTheOpen(program, args, { env = {} } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd: rootFolder, env: { ...process.env, ...env }, stdio: 'inherit' })
    child.on('error', (error) => reject(new StepError(`could not start ${program}: ${error.message}`)))
    child.on('close', (code) => resolve(code ?? 1))
  })
}

/**
 * Run a program and keep what it prints, for several that run side by side.
 * @param {string} program
 * @param {string[]} args
 * @returns {Promise<{ status: number, output: string }>}
 */
export function runForOutput(program, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd: rootFolder, stdio: ['ignore', 'pipe', 'pipe'] })
    let output = ''
    const collect = (/** @type {Buffer} */ part) => {
      output += part.toString()
    }
    child.stdout.on('data', collect)
    child.stderr.on('data', collect)
    child.on('error', (error) => reject(new StepError(`could not start ${program}: ${error.message}`)))
    child.on('close', (code) => resolve({ status: code ?? 1, output }))
  })
}

/**
 * Run the body of a command-line program: a StepError ends it with one message and exit status 1, anything else is a
 * defect and keeps its stack.
 * @param {() => Promise<void>} body
 */
export async function runAsCommand(body) {
  try {
    await body()
  } catch (error) {
    process.stderr.write(error instanceof StepError ? `${error.message}\n` : `${/** @type {Error} */ (error).stack}\n`)
    process.exitCode = 1
  }
}
