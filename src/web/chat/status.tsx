import { StatusLeave } from './status-leave.tsx'
import { StatusMoney } from './status-money.tsx'
import { StatusNext } from './status-next.tsx'
import { StatusSteps } from './status-steps.tsx'
import type { StatusShown } from './view-status.ts'

/** Above the papers of a confirmed pile: what is asked for now, where it stands, money. */
export const StatusTop = ({ status }: { status: StatusShown }) => (
  <>
    <StatusNext next={status.next} />
    <StatusSteps status={status} />
    {status.box && <StatusBox box={status.box} />}
    <StatusMoney status={status} />
  </>
)

const StatusBox = ({ box }: { box: NonNullable<StatusShown['box']> }) => (
  <section class="card" aria-labelledby="box-check-title">
    <h2 id="box-check-title">{box.title}</h2>
    <ul class="small-steps">
      {box.lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  </section>
)

/** Below them: the ways out. */
export const StatusFoot = ({ status }: { status: StatusShown }) => (
  <StatusLeave leave={status.leave} />
)
