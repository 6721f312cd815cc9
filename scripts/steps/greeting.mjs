import path from 'node:path'
import { rootFolder } from './places.mjs'

/**
 * What is printed once the server answers.
 * @param {Pick<import('./prepare').Preparation, 'publicUrl' | 'dataFolder' | 'signIns' | 'setupCode'>} plan
 * @returns {string[]}
 */
export function listGreetingLines({ publicUrl, dataFolder, signIns, setupCode }) {
  const folder = path.relative(rootFolder, dataFolder)
  const shown = folder.startsWith('..') ? dataFolder : `./${folder}`
  const lines = [`Bendworthy is at ${publicUrl} (data in ${shown}; Ctrl-C stops it)`]
  if (setupCode !== null) {
    lines.push(
      'Nobody has an account yet: open the address to create the first administrator.',
      `Set-up code, asked for there and good for once: ${setupCode}`,
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
