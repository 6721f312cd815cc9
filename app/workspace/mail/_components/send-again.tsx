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
          ? 'It may already have been delivered; it would then arrive a second time, with the same Message-ID.'
          : 'It is sent again with the same content and the same Message-ID.',
        label: 'Send it again',
      }}
    >
      Send again
    </ActionButton>
  )
}
