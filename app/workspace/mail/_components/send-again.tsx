'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import { sendMailAgain } from '../actions'

export function SendAgain({ mailId, isUncertain }: { mailId: string; isUncertain: boolean }) {
  return (
    <ActionButton
      action={sendMailAgain}
      input={{ mailId }}
      confirm={{
        title: 'Send the message again?',
        text: isUncertain
          ? 'It may have gone out already: then it arrives a second time, under the same Message-ID.'
          : 'It is tried anew, with the same content and the same Message-ID.',
        label: 'Send it again',
      }}
    >
      Send again
    </ActionButton>
  )
}
