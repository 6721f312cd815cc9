import { paths } from '@/lib/addresses'
import { LinkButton } from './_components/ui/button'
import { PageHead } from './_components/ui/section'

export default function NotFound() {
  return (
    <>
      <PageHead
        title="Page not found"
        under="There is no such page, or it is not shared with you. Ask the person who gave you the address."
      />
      <LinkButton href={paths.home()}>Go to “Waiting for me”</LinkButton>
    </>
  )
}
