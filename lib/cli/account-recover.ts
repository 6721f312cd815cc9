import { parseArgs } from 'node:util'
import { emailSchema } from '@/lib/inputs'

const USAGE = `Creates a link that sets a new password, for the operator of the installation: the way back in for the last administrator. The link
works once, for a day. The account is enabled if it was disabled; the trail records it, and the owner is told by mail.

  npm run account:recover -- name@example.org
  npm run account:recover -- name@example.org --remove-second-factor

Exit status: 0 the link is printed, 1 no account has this address, 2 it could not be done.`

/** Ends with a message. */
function stop(message: string, status: 1 | 2): never {
  console.error(message)
  process.exit(status)
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { 'remove-second-factor': { type: 'boolean', default: false }, help: { type: 'boolean', short: 'h' } },
    })
  } catch (error) {
    return stop(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`, 2)
  }
}

const { values, positionals } = readArguments()
if (values.help === true) {
  console.log(USAGE)
  process.exit(0)
}
if (positionals.length !== 1) stop(USAGE, 2)
const email = emailSchema.safeParse(positionals[0])
if (!email.success) stop(`"${positionals[0]}" ${email.error.issues[0]?.message ?? 'is not an e-mail address'}`, 2)

try {
  // Loaded only here: the words of help need no database.
  const { recoverAccount } = await import('@/lib/data')
  const made = await recoverAccount(email.data, { removeSecondFactor: values['remove-second-factor'] })
  if (made === null) stop(`No account has the address ${email.data}.`, 1)
  console.log(`Open this within a day to set a new password for ${email.data}; it works once:`)
  console.log(`  ${made.link}`)
  process.exit(0)
} catch (error) {
  stop(`It could not be done: ${error instanceof Error ? error.message : String(error)}`, 2)
}
