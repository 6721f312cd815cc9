import { BlockerList } from '@/app/_components/review/blocker-list'
import { DeclarationForm } from '@/app/_components/review/declaration-form'
import { DeclarationList } from '@/app/_components/review/declaration-list'
import { DifferenceList } from '@/app/_components/review/difference-list'
import { IndependencePanel } from '@/app/_components/review/independence-panel'
import { ReleaseButton } from '@/app/_components/review/release-button'
import { ReleaseFabricators } from '@/app/_components/review/release-fabricators'
import { ReviewPanel } from '@/app/_components/review/review-panel'
import { SignForm } from '@/app/_components/review/sign-form'
import { SignatureList } from '@/app/_components/review/signature-list'
import { SigningSummaryView } from '@/app/_components/review/signing-summary'
import { ProfileLine } from '@/app/_components/review/template-notice'
import { STAGE_WORDS } from '@/app/_components/review/words'
import { LinkButton } from '@/app/_components/ui/button'
import { Cautions } from '@/app/_components/ui/cautions'
import { EmptyState, Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getSecondFactor, type RevisionView, type SecondFactorView } from '@/lib/data'
import { asFileSize } from '@/lib/engine/units'
import { describeTerms, listConditionFields } from '@/lib/review'
import { loadRevision, type RevisionParams } from '../load-revision'

export default async function SignOffPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const factor = await getSecondFactor(actor)
  // One's own signature that stands is the one that can be withdrawn.
  const hasSigned = revision.signatures.some(({ mayWithdraw }) => mayWithdraw)
  const maySign = revision.may.sign && !hasSigned
  return (
    <>
      <PageSection title="Blocking">
        {revision.blockers.length === 0 ? (
          <p>Nothing blocks the next stage.</p>
        ) : (
          <BlockerList projectId={projectId} revisionId={revisionId} blockers={revision.blockers} />
        )}
      </PageSection>
      <PageSection title="Profiles">
        <ProfileLine revision={revision} />
      </PageSection>
      <PageSection title="Authors and policy">
        <IndependencePanel revision={revision} />
      </PageSection>
      <PageSection title="Words against numbers">
        <DifferenceList revision={revision} />
      </PageSection>
      <PageSection title="Review">
        <ReviewPanel revision={revision} factor={factor} />
      </PageSection>
      <Declarations revision={revision} factor={factor} />
      <PageSection title="Signatures">
        <SignatureList signatures={revision.signatures} projectId={projectId} revisionId={revisionId} factor={factor} />
        {hasSigned && <p className="muted above">You have signed this content.</p>}
        {maySign && revision.signingBlockers.length > 0 && (
          <div className="above-wide">
            <p>You cannot sign yet:</p>
            <BlockerList projectId={projectId} revisionId={revisionId} blockers={revision.signingBlockers} />
          </div>
        )}
        {maySign && revision.signingBlockers.length === 0 && (
          <div className="above-wide">
            <h3 className="below">Sign this content</h3>
            {revision.signingSummary !== null && (
              <SigningSummaryView summary={revision.signingSummary} projectId={projectId} revisionId={revisionId} />
            )}
            <SignForm
              // A form that was opened on other content must not keep that content's hash.
              key={revision.contentHash}
              projectId={projectId}
              revisionId={revisionId}
              version={revision.version}
              contentHash={revision.contentHash}
              statement={revision.statement}
              capacities={revision.signingCapacities}
              factor={factor}
            />
          </div>
        )}
        {!revision.may.sign && revision.stage === 'awaiting-signature' && (
          <p className="muted above">
            A lead, a member or quality signs, in a capacity that was granted to them. None is granted to you.
          </p>
        )}
        {!revision.may.sign && revision.stage !== 'awaiting-signature' && revision.package === null && (
          <p className="muted above">Signing is possible once the revision awaits signature.</p>
        )}
      </PageSection>
      <Release revision={revision} factor={factor} />
      {revision.stageMoves.length > 0 && (
        <PageSection title="Stage changes">
          <ol className="timeline">
            {revision.stageMoves.map((move) => (
              <li key={`${move.at} ${move.to}`}>
                <Timestamp at={move.at} />
                <span>
                  {STAGE_WORDS[move.from]} to {STAGE_WORDS[move.to]}
                  {move.reason !== '' && `: ${move.reason}`} <span className="muted">{move.by.name}</span>
                </span>
              </li>
            ))}
          </ol>
        </PageSection>
      )}
    </>
  )
}

function Declarations({ revision, factor }: { revision: RevisionView; factor: SecondFactorView }) {
  return (
    <PageSection title="Fabricator’s declaration" id="declaration">
      {revision.declarations.length === 0 ? (
        <EmptyState>
          {revision.sharedWith.length === 0
            ? 'The revision is not shared with a fabricator yet.'
            : 'No fabricator has declared yet.'}
        </EmptyState>
      ) : (
        <DeclarationList declarations={revision.declarations} team={revision.team} />
      )}
      {revision.standings.length > 0 && (
        <div className="above">
          <h3>Each fabricator’s answer to this content</h3>
          <ReleaseFabricators
            revisionId={revision.id}
            version={revision.version}
            standings={revision.standings}
            mayChoose={revision.may.chooseFabricators}
          />
        </div>
      )}
      {revision.may.declare && (
        <div className="above-wide">
          <DeclarationForm
            key={`${revision.version}`}
            revisionId={revision.id}
            version={revision.version}
            factor={factor}
            fields={listConditionFields(revision.design)}
          />
        </div>
      )}
    </PageSection>
  )
}

function Release({ revision, factor }: { revision: RevisionView; factor: SecondFactorView }) {
  const released = revision.package
  return (
    <PageSection title="Release">
      {released === null ? (
        <div className="stack">
          <p className="muted">
            Release builds the package: report, drawing sheet, design, results, artwork, trail, and a signed manifest of
            their hashes. It supersedes an earlier release of this project.
          </p>
          {revision.may.release && revision.blockers.length === 0 ? (
            <ReleaseButton
              revisionId={revision.id}
              version={revision.version}
              factor={factor}
              replaces={revision.wouldReplace}
            />
          ) : (
            <p className="muted">
              {revision.blockers.length > 0
                ? 'Cannot be released until the blockers above are resolved.'
                : 'A lead engineer releases it.'}
            </p>
          )}
        </div>
      ) : (
        <div className="stack">
          <dl className="terms">
            <dt>released</dt>
            <dd>
              {released.releasedBy.name}, <Timestamp at={released.releasedAt} /> UTC
            </dd>
            {revision.release !== null && (
              <>
                <dt>{revision.release.isConditional ? 'conditionally' : 'in full'}</dt>
                <dd>
                  {describeTerms(revision.release)}
                  {revision.release.conditions !== '' && `; ${revision.release.conditions}`}
                </dd>
                <dt>replaces</dt>
                <dd>
                  {revision.release.replaces === null ? 'nothing' : `revision ${revision.release.replaces}`}
                  {revision.release.reason !== '' && `: ${revision.release.reason}`}
                </dd>
              </>
            )}
            <dt>package</dt>
            <dd>
              {released.fileName}, {asFileSize(released.sizeBytes)}
            </dd>
            <dt>sha-256</dt>
            <dd className="hash">{released.sha256}</dd>
          </dl>
          {revision.stage !== 'released' && (
            <Notice tone="refused">
              <p>
                Obsolete: the revision is {STAGE_WORDS[revision.stage]}. Do not build from it. The download holds its
                documents marked on every page, and the package as it was signed.
              </p>
            </Notice>
          )}
          {revision.may.downloadPackage && <Cautions />}
          {revision.may.downloadPackage && (
            <div className="row">
              <LinkButton href={paths.package(revision.id)} weight="strong" download>
                Download the package
              </LinkButton>
              <LinkButton href={paths.verifyPackage()} weight="quiet">
                Verify a package
              </LinkButton>
            </div>
          )}
        </div>
      )}
    </PageSection>
  )
}
