import path from 'node:path'
import { rootFolder } from './places.mjs'

/**
 * What is said once the server answers.
 * @param {Pick<import('./prepare').Preparation, 'publicUrl' | 'dataFolder' | 'signIns' | 'isEmpty' | 'isLoopback'>} plan
 * @returns {string[]}
 */
export function listGreetingLines({ publicUrl, dataFolder, signIns, isEmpty, isLoopback }) {
  const folder = path.relative(rootFolder, dataFolder)
  const shown = folder.startsWith('..') ? dataFolder : `./${folder}`
  const lines = [`Bendworthy is at ${publicUrl} (data in ${shown}; Ctrl-C stops it)`]
  if (isEmpty && isLoopback) {
    lines.push('Nobody has an account yet: open the address on this machine to create the first administrator.')
  }
  if (isEmpty && !isLoopback) {
    // Whoever came first would own it; the page refuses too.
    lines.push(
      'Nobody has an account yet, and the first administrator is created only while other machines cannot reach the server:',
      'stop it, start it once by npm start -- --empty, create the account, then start it as now.',
    )
  }
  if (signIns.length === 0) return lines
  const width = (/** @type {'email' | 'password' | 'name'} */ key) =>
    Math.max(...signIns.map((signIn) => signIn[key].length))
  lines.push('Demo sign-ins, accepted on this machine only:')
  for (const { email, password, name, role } of signIns) {
    lines.push(
      `  ${email.padEnd(width('email'))}  ${password.padEnd(width('password'))}  ${name.padEnd(width('name'))}  ${role}`,
    )
  }
  return lines
}
