import { paths } from './_components/shell/paths'
import { LinkButton } from './_components/ui/button'
import { PageHead } from './_components/ui/section'

export default function NotFound() {
  return (
    <>
      <PageHead
        title="Not here"
        under="There is no such page, or it is not shared with you. Whoever gave you the address can tell which."
      />
      <LinkButton href={paths.home()}>To what waits for you</LinkButton>
    </>
  )
}
