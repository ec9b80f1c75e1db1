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
    <StatusMoney status={status} />
  </>
)

/** Below them: the ways out. */
export const StatusFoot = ({ status }: { status: StatusShown }) => (
  <StatusLeave leave={status.leave} />
)
